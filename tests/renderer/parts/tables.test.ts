import { describe, expect, it } from 'vitest'
import { nextSort, sortRows } from '../../../renderer/parts/sort-rows.ts'
import { lineCalled, rowsOf, rowsShown, shortName } from '../../../renderer/parts/worksheet-rows.ts'
import { inputLine, type WorksheetLine } from '../../../core/worksheet/index.ts'

const line = (symbol: string): WorksheetLine => inputLine({ symbol, name: `name of ${symbol}`, value: '1', unit: '', clause: 'HOUSE' })

describe('worksheets side by side', () => {
  it('stand by symbol; a line that one has alone follows the line before it there', () => {
    const rows = rowsOf([{ title: 'Opening', lines: [line('TOV'), line('GOV')] }, { title: 'Closing', lines: [line('TOV'), line('FRA'), line('GOV')] }])
    expect(rows.map(({ symbol, lines }) => [symbol, lines.map((one) => one?.symbol ?? '')])).toEqual([['TOV', ['TOV', 'TOV']], ['FRA', ['', 'FRA']], ['GOV', ['GOV', 'GOV']]])
  })
  it('keep what was moved in the row it belongs to', () => {
    const rows = rowsOf([{ title: 'Opening', lines: [line('GSV')] }, { title: 'Moved', lines: [line('ΔGSV'), line('GSV moved')], rowOf: (symbol) => symbol.replace(/ moved$/, '') }])
    expect(rows.find(({ symbol }) => symbol === 'GSV')?.lines.map((one) => one?.symbol)).toEqual(['GSV', 'GSV moved'])
    expect(rowsShown(rows, false).map(({ symbol }) => symbol)).toEqual(['GSV'])
    expect(rowsShown(rows, true)).toHaveLength(2)
  })
  it('name a correction by what it corrects for, where there is little room', () => {
    expect([shortName('Correction for the effect of temperature on the shell'), shortName('Correction for sediment and water'), shortName('Free water')]).toEqual(['Temperature on the shell', 'Sediment and water', 'Free water'])
  })
  it('find the inputs of a line, also those of another column', () => {
    const closing = { id: 'closing', title: 'Closing', lines: [line('GSV')] }
    const moved = { title: 'Moved', lines: [line('ΔGSV')] }
    expect(lineCalled('closing.GSV', moved, [closing, moved])?.symbol).toBe('GSV')
    expect(lineCalled('ΔGSV', moved, [closing, moved])?.symbol).toBe('ΔGSV')
    expect(lineCalled('opening.GSV', moved, [closing, moved])).toBeUndefined()
  })
})

describe('rows in an order', () => {
  it('go up, down, and back to the order they came in', () => {
    const up = nextSort(null, 'nsv')
    const down = nextSort(up, 'nsv')
    expect([up?.direction, down?.direction, nextSort(down, 'nsv')]).toEqual(['ascending', 'descending', null])
    expect(nextSort(down, 'tank')).toEqual({ key: 'tank', direction: 'ascending' })
  })
  it('numbers by size, codes by the number in them', () => {
    expect(sortRows([{ v: 9 }, { v: 10 }, { v: -1 }], (row) => row.v, 'ascending').map(({ v }) => v)).toEqual([-1, 9, 10])
    expect(sortRows(['T-10', 'T-9', 'T-101'], (row) => row, 'descending')).toEqual(['T-101', 'T-10', 'T-9'])
  })
})
