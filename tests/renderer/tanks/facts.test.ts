import { expect, it } from 'vitest'
import { limitInWords, tankFacts } from '../../../renderer/tanks/facts.ts'
import { TANKS } from '../a-yard.ts'

it('states what decides the numbers of a tank, its roof when it floats', () => {
  const facts = Object.fromEntries(tankFacts(TANKS[2]!, 'Sour crude'))
  expect(facts).toMatchObject({ 'Roof mass': '215000 lb', 'Critical zone': '5 ft 0 in to 6 ft 6 in', 'Reference gauge height': '52 ft 4 1/2 in', Rows: '49', 'Table volumes in': 'bbl' })
  expect(Object.fromEntries(tankFacts(TANKS[0]!, 'Light crude'))).not.toHaveProperty('Roof mass')
})

it('says a limit as its parts', () => {
  expect(limitInWords({ product: 'CRUDE', percent: '0.25 %', fixed: '2 m3', base: 'receipts', source: 'contract' })).toBe('0.25 % of receipts, plus 2 m3')
})
