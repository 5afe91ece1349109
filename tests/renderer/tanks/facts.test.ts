import { expect, it } from 'vitest'
import { limitInWords, tankFacts } from '../../../renderer/tanks/facts.ts'
import { TANKS } from '../a-yard.ts'
import { aCapacityTable, aFloatingRoof, aTank } from '../../support/tanks.ts'

it('states what decides the numbers of a tank, its roof when it floats', () => {
  const facts = Object.fromEntries(tankFacts(TANKS[2]!, 'Sour crude'))
  expect(facts).toMatchObject({ 'Roof mass': '215000 lb', 'Critical zone': '5 ft 0 in to 6 ft 6 in', 'Reference gauge height': '52 ft 4 1/2 in', Rows: '49', 'Table volumes in': 'bbl' })
  expect(Object.fromEntries(tankFacts(TANKS[0]!, 'Light crude'))).not.toHaveProperty('Roof mass')
})

it('says a limit as its parts', () => {
  expect(limitInWords({ product: 'CRUDE', percent: '0.25 %', fixed: '2 m3', base: 'receipts', source: 'contract' })).toBe('0.25 % of receipts, plus 2 m³')
  expect(limitInWords({ product: 'CRUDE', percent: '0.25 %', fixed: '0 bbl', base: 'receipts', source: 'contract' })).toBe('0.25 % of receipts')
})


it('states what only some certificates say', () => {
  const tank = aTank({ usualWaterCut: '20 mm', roof: aFloatingRoof({ legs: { low: '1.5 m', high: '2.1 m', position: 'low' } }), capacityTable: aCapacityTable({ revision: '2', bottom: 'cone-down', heel: '0 m3', layout: 'parts' }) })
  expect(Object.fromEntries(tankFacts(tank, 'Light crude'))).toMatchObject({ Revision: '2', Bottom: 'cone down', 'Below the datum plate': '0 m3', 'Read as': 'with a part table', 'Usual water cut': '20 mm', 'Legs of the roof': '1.5 m low, 2.1 m high; now low' })
  expect(Object.fromEntries(tankFacts(TANKS[0]!, 'Light crude'))).not.toHaveProperty('Revision')
})
