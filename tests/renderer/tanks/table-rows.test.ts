import { expect, it } from 'vitest'
import { shownRows } from '../../../renderer/tanks/table-rows.ts'
import { TANKS } from '../a-yard.ts'

it('shows rows in the unit the table is written in, and what a millimetre above each is worth (1000 bbl / 304.8 mm = 3.2808, arithmetic)', () => {
  expect(shownRows(TANKS[2]!.capacityTable, 2)).toEqual([
    { key: '0', level: '0 ft 0 in', volume: '0', perMillimetre: '3.2808' }, { key: '304.8', level: '1 ft 0 in', volume: '1000', perMillimetre: '3.2808' },
  ])
})

it('has nothing above the last row', () => {
  expect(shownRows(TANKS[2]!.capacityTable, 100).at(-1)?.perMillimetre).toBe('')
})
