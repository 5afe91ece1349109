import { readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { lossGain, type LossGain, type LossGainInput } from '../../../core/reconciliation/index.ts'
import type { Outcome } from '../../../core/refusal/index.ts'
import { Decimal } from '../../../core/units/index.ts'

interface Row { readonly id: string; readonly inputs: Readonly<Record<string, unknown>>; readonly expected: Readonly<Record<string, unknown>> }
const ROWS = JSON.parse(readFileSync(new URL('../../published/reconciliation.json', import.meta.url), 'utf8')) as readonly Row[]
function row(id: string): Row {
  const found = ROWS.find((candidate) => candidate.id === id)
  if (found === undefined) throw new Error(`no published row ${id}`)
  return found
}

function aMonth(parts: Partial<LossGainInput> = {}): LossGainInput {
  return {
    unit: 'gal', opening: '5000 gal', receipts: ['8000 gal'], deliveries: ['10000 gal'], adjustments: [], closing: '3000 gal',
    limit: { percent: '1.0 %', fixed: '130 gal', base: 'deliveries', source: '40 CFR 280.43(a)' }, ...parts,
  }
}
function value(outcome: Outcome<LossGain>): LossGain {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings))
  return outcome.value
}

describe('published limits on a month', () => {
  it('INV-WI-05PCT: 0.5 % of 1 000 gal is 5 gal (Wisconsin tank operator training, 4.4.2)', () => {
    const { inputs, expected } = row('INV-WI-05PCT')
    const throughput = String(inputs.throughput_gal)
    const month = value(lossGain(aMonth({
      opening: '2000 gal', receipts: [], deliveries: [`${throughput} gal`], closing: '994 gal',
      limit: { percent: `${String(expected.limit_pct)} %`, fixed: '0 gal', base: 'deliveries', source: 'Wisconsin' },
    })))
    expect(new Decimal(month.limit.value).equals(String(expected.limit_gal))).toBe(true)
    expect(month.lossGain.value).toBe('-6')
    expect(month.verdict).toBe('loss-outside-limit')
  })

  it('UST-MAINE-01: 6 gal short against a leak check of 5 gal is reportable (Maine DEP UST-08)', () => {
    const { inputs, expected } = row('UST-MAINE-01')
    // the leak check of the form is 1 % of the gallons pumped: 5 gal are those of 500 gal
    const month = value(lossGain(aMonth({
      opening: '1000 gal', receipts: [], deliveries: ['500 gal'], closing: `${String(500 + Number(inputs.cumulative_over_short_gal))} gal`,
      limit: { percent: '1 %', fixed: '0 gal', base: 'deliveries', source: 'Maine UST-08' },
    })))
    expect(month.limit.value).toBe(String(inputs.leak_check_gal))
    expect(month.lossGain.value).toBe(String(inputs.cumulative_over_short_gal))
    expect(month.verdict !== 'within-limit').toBe(expected.reportable)
  })

  it('UST-MAINE-FORMULA: closing book is opening − pumped + delivered, over or short is stick − book (Maine DEP UST-08)', () => {
    expect(row('UST-MAINE-FORMULA').expected).toMatchObject({ E_closing_book: 'A - C + D', F_cumulative_over_short: 'B - E' })
    const month = value(lossGain(aMonth({ opening: '4100 gal', receipts: ['3000 gal'], deliveries: ['2600 gal'], closing: '4510 gal' })))
    expect(month.bookClosing.value).toBe('4500')
    expect(month.lossGain.value).toBe('10')
  })

  it.each(['UST-1PCT130-RULE', 'UST-1PCT130-OAR'])('%s: 1.0 per cent of the flow-through plus 130 gal (40 CFR 280.43(a) as mirrored by the states)', (id) => {
    const { expected } = row(id)
    expect(expected.threshold_gal ?? `0.0${String(expected.pct_flow)}*F + ${String(expected.constant_gal)}`).toMatch(/^0\.01\*F \+ 130$/)
    const month = value(lossGain(aMonth({ deliveries: ['10000 gal'], closing: '2770 gal' })))
    expect(month.limit.value).toBe('230')
    expect(month.verdict).toBe('within-limit')
    expect(value(lossGain(aMonth({ closing: '2769 gal' }))).verdict).toBe('loss-outside-limit')
    expect(value(lossGain(aMonth({ closing: '3231 gal' }))).verdict).toBe('gain-outside-limit')
  })

  it.each([['ARMY-LOSS-GAS', '1.0'], ['ARMY-LOSS-OTHER', '0.5']])('%s: %s per cent of opening inventory and receipts, not of the issues (US Army QM 5097)', (id, percent) => {
    expect(row(id).expected.allowance).toBe(`${percent} % of (opening inventory + receipts)`)
    const month = value(lossGain(aMonth({ limit: { percent: `${percent} %`, fixed: '0 gal', base: 'opening-and-receipts', source: 'US Army' } })))
    expect(month.throughput.value).toBe('13000')
    expect(new Decimal(month.limit.value).equals(new Decimal(percent).times(130))).toBe(true)
  })

  it('LG-PERCENT: closing + deliveries − opening − receipts, per cent of throughput, a loss is negative (API MPMS 23.1, from memory)', () => {
    expect(row('LG-PERCENT').expected).toMatchObject({ L_G: 'closing inventory + deliveries - opening inventory - receipts', sign: 'loss negative' })
    const month = value(lossGain(aMonth({ closing: '2950 gal' })))
    expect(month.lossGain.value).toBe('-50')
    expect(month.percent).toBe('-0.500')
  })
})

describe('loss or gain', () => {
  it('adds adjustments to the book with their sign', () => {
    const month = value(lossGain(aMonth({ adjustments: ['-40 gal', '15 gal'], closing: '2975 gal' })))
    expect([month.adjustments.value, month.bookClosing.value, month.lossGain.value]).toEqual(['-25', '2975', '0'])
  })

  it('gives no percentage where nothing was moved', () => {
    const month = value(lossGain(aMonth({ receipts: [], deliveries: [], closing: '4990 gal' })))
    expect(month.percent).toBeNull()
    expect(month.limit.value).toBe('130')
    expect(month.worksheet.map((line) => line.symbol)).not.toContain('PCT')
  })

  it('converts a figure written in another unit once, to the discrimination of the period: 130 gal are 3.10 bbl', () => {
    const month = value(lossGain(aMonth({ unit: 'bbl', opening: '5000 bbl', receipts: [], deliveries: [], closing: '4996.91 bbl' })))
    // NIST Handbook 44, appendix C: 1 bbl = 42 gal, so 130 gal = 3.0952… bbl
    expect(month.limit.value).toBe('3.10')
    expect(month.verdict).toBe('within-limit')
  })

  it('calls a loss significant when it is larger than its expanded uncertainty', () => {
    expect(value(lossGain(aMonth({ closing: '2990 gal', expandedUncertainty: '10 gal' }))).significance?.significant).toBe(false)
    expect(value(lossGain(aMonth({ closing: '2989 gal', expandedUncertainty: '10 gal' }))).significance?.significant).toBe(true)
    expect(value(lossGain(aMonth())).significance).toBeNull()
  })

  it('shows every figure on its worksheet, each computed from lines above it', () => {
    const month = value(lossGain(aMonth()))
    const symbols = month.worksheet.map((line) => line.symbol)
    month.worksheet.forEach((line, i) => { for (const from of line.from) expect(symbols.indexOf(from)).toBeLessThan(i) })
    expect(month.worksheet.find((line) => line.symbol === 'LG')).toMatchObject({ value: month.lossGain.value, formula: 'CLOSE − BOOK' })
  })

  it('names everything that is wrong at once', () => {
    const outcome = lossGain(aMonth({ opening: '-5 gal', receipts: ['8000'], deliveries: ['10000 gal', '1,000 gal'], closing: '3000 ft', limit: { percent: '101 %', fixed: '-1 gal', base: 'deliveries', source: 'none' } }))
    expect(outcome.ok ? [] : outcome.findings.map((finding) => [finding.code, finding.path])).toEqual([
      ['out-of-range', 'opening'], ['unreadable-value', 'receipts.0'], ['unreadable-value', 'deliveries.1'], ['unit-not-accepted', 'closing'],
      ['out-of-range', 'limit.percent'], ['out-of-range', 'limit.fixed'],
    ])
  })

  it('balances to the last digit: book + loss or gain = measured closing', () => {
    const hundredths = fc.integer({ min: 0, max: 10 ** 9 }).map((n) => `${new Decimal(n).div(100).toFixed(2)} bbl`)
    fc.assert(fc.property(hundredths, fc.array(hundredths, { maxLength: 8 }), fc.array(hundredths, { maxLength: 8 }), hundredths, (opening, receipts, deliveries, closing) => {
      const month = value(lossGain(aMonth({ unit: 'bbl', opening, receipts, deliveries, closing })))
      expect(new Decimal(month.bookClosing.value).plus(month.lossGain.value).equals(month.measuredClosing.value)).toBe(true)
    }), { seed: 20260301, numRuns: 200 })
  })
})
