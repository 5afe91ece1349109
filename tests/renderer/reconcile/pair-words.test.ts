import { expect, it } from 'vitest'
import { pairInWords } from '../../../renderer/reconcile/pair-words.ts'
import { aReport } from '../../core/chart/a-report.ts'

const pair = aReport().oppositePairs[0]!

it('says which tank lost what the other gained, in the name of the product', () => {
  expect(pairInWords(pair, aReport())).toContain('T-101 lost what T-102 gained: 20.50 bbl against 19.75 bbl of Crude oil')
})

it('says how steadily, when that was counted', () => {
  const counted = { ...pair, losingSteps: { thatWay: 16, of: 17 }, gainingSteps: { thatWay: 15, of: 17 } }
  expect(pairInWords(counted, aReport())).toContain('T-101 went down in 16 of 17 of its unbooked steps, T-102 up in 15 of 17.')
})
