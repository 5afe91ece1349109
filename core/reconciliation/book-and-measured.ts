import { accepted, allOf, optional, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import { Decimal } from '../units/index.ts'
import { exactLine, inputLine, roundedLine, type Quantity, type WorksheetLine } from '../worksheet/index.ts'
import type { LossGain, LossGainInput, ThroughputBase } from './loss-gain.ts'
import { readFigure, readFigures, readShare, volumeText } from './read-figures.ts'

type Figures = {
  readonly opening: Decimal; readonly receipts: readonly Decimal[]; readonly deliveries: readonly Decimal[]
  readonly transfersIn: readonly Decimal[]; readonly transfersOut: readonly Decimal[]; readonly adjustments: readonly Decimal[]; readonly closing: Decimal
  readonly percent: Decimal; readonly fixed: Decimal; readonly uncertainty: Decimal | undefined
}

/** What each base of throughput adds up, in the symbols of the worksheet. */
const BASES: { readonly [B in ThroughputBase]: readonly ('OPEN' | 'REC' | 'DEL')[] } = {
  deliveries: ['DEL'], receipts: ['REC'], 'receipts-and-deliveries': ['REC', 'DEL'], 'opening-and-receipts': ['OPEN', 'REC'],
}

/**
 * Loss or gain of a period, as a share of the throughput and against a limit; a loss is negative.
 *   BOOK = OPEN + REC + TIN − DEL − TOUT + ADJ, LG = CLOSE − BOOK, PCT = 100 LG / TP, LIMIT = p TP / 100 + FIXED
 * Sums and differences are exact; PCT and LIMIT are rounded once, and the verdict compares the printed figures:
 * outside means that |LG| is larger than LIMIT. Significant means that |LG| is larger than its expanded uncertainty.
 * Refuses `unreadable-value`, `unit-not-accepted`, `out-of-range`, all at once.
 * @param input figures of the period as written, each with its unit
 * @source MPMS-23.1 loss/gain
 * @source CFR40-280.43 (a)
 * @checked INV-WI-05PCT
 * @checked UST-MAINE-01
 */
export function lossGain(input: LossGainInput): Outcome<LossGain> {
  const { unit, limit } = input
  const figures = allOf<Figures>({
    opening: readFigure(input.opening, 'opening', unit, 'not-negative'),
    receipts: readFigures(input.receipts, 'receipts', unit, 'not-negative'),
    deliveries: readFigures(input.deliveries, 'deliveries', unit, 'not-negative'),
    transfersIn: readFigures(input.transfersIn ?? [], 'transfersIn', unit, 'not-negative'),
    transfersOut: readFigures(input.transfersOut ?? [], 'transfersOut', unit, 'not-negative'),
    adjustments: readFigures(input.adjustments, 'adjustments', unit, 'signed'),
    closing: readFigure(input.closing, 'closing', unit, 'not-negative'),
    percent: readShare(limit.percent, 'limit.percent'),
    fixed: readFigure(limit.fixed, 'limit.fixed', unit, 'not-negative'),
    uncertainty: optional(input.expandedUncertainty, (text) => readFigure(text, 'expandedUncertainty', unit, 'not-negative')),
  })
  return figures.ok ? accepted(compare(figures.value, input)) : figures
}

function compare(figures: Figures, input: LossGainInput): LossGain {
  const { unit } = input
  const sums = { OPEN: figures.opening, REC: sum(figures.receipts), DEL: sum(figures.deliveries) }
  const adjustments = sum(figures.adjustments)
  const [transfersIn, transfersOut] = [sum(figures.transfersIn), sum(figures.transfersOut)]
  const book = sums.OPEN.plus(sums.REC).plus(transfersIn).minus(sums.DEL).minus(transfersOut).plus(adjustments)
  const moved = figures.transfersIn.length + figures.transfersOut.length > 0
  const difference = figures.closing.minus(book)
  const base = BASES[input.limit.base]
  const throughput = sum(base.map((symbol) => sums[symbol]))
  const share = throughput.isZero() ? undefined : discriminate('share %', difference.times(100).div(throughput))
  const limit = discriminate(`volume ${unit}`, figures.percent.times(throughput).div(100).plus(figures.fixed))
  const quantity = (value: Decimal): Quantity => ({ value: volumeText(value, unit), unit })
  const significance = figures.uncertainty === undefined ? null
    : { expandedUncertainty: quantity(figures.uncertainty), significant: difference.abs().greaterThan(figures.uncertainty) }

  const line = (symbol: string, name: string, value: Decimal, formula: string, from: readonly string[], notes: readonly string[] = []): WorksheetLine =>
    ({ ...exactLine({ symbol, name, value, unit, formula, from, notes, clause: 'MPMS-23.1 loss/gain' }), value: volumeText(value, unit) })
  const worksheet: readonly WorksheetLine[] = [
    line('OPEN', 'Opening measured inventory', sums.OPEN, '', []),
    line('REC', 'Receipts', sums.REC, `sum of ${String(figures.receipts.length)} tickets`, []),
    line('DEL', 'Deliveries', sums.DEL, `sum of ${String(figures.deliveries.length)} tickets`, []),
    ...(moved ? [
      line('TIN', 'Transfers in', transfersIn, `sum of ${String(figures.transfersIn.length)} movements from other tanks or names`, []),
      line('TOUT', 'Transfers out', transfersOut, `sum of ${String(figures.transfersOut.length)} movements to other tanks or names`, []),
    ] : []),
    line('ADJ', 'Adjustments', adjustments, `sum of ${String(figures.adjustments.length)} adjustments`, []),
    moved ? line('BOOK', 'Book closing', book, 'OPEN + REC + TIN − DEL − TOUT + ADJ', ['OPEN', 'REC', 'TIN', 'DEL', 'TOUT', 'ADJ'])
      : line('BOOK', 'Book closing', book, 'OPEN + REC − DEL + ADJ', ['OPEN', 'REC', 'DEL', 'ADJ']),
    line('CLOSE', 'Closing measured inventory', figures.closing, '', []),
    line('LG', 'Loss or gain', difference, 'CLOSE − BOOK', ['CLOSE', 'BOOK'], ['a loss is negative']),
    line('TP', 'Throughput', throughput, base.join(' + '), base, [input.limit.base.replaceAll('-', ' ')]),
    ...(share === undefined ? [] : [roundedLine({ symbol: 'PCT', name: 'Loss or gain, share of throughput', unit: '%', formula: '100 × LG / TP', from: ['LG', 'TP'], rounded: share, clause: 'MPMS-23.1 loss/gain' })]),
    inputLine({ symbol: 'p', name: 'Limit, share of throughput', value: figures.percent.toFixed(), unit: '%', clause: 'MPMS-23.1', notes: [input.limit.source] }),
    { ...inputLine({ symbol: 'FIXED', name: 'Limit, fixed part', value: volumeText(figures.fixed, unit), unit, clause: 'MPMS-23.1', notes: [input.limit.source] }), unrounded: figures.fixed.toFixed() },
    roundedLine({ symbol: 'LIMIT', name: 'Limit', unit, formula: 'p × TP / 100 + FIXED', from: ['p', 'TP', 'FIXED'], rounded: limit, clause: 'MPMS-23.1' }),
  ]
  return {
    opening: quantity(sums.OPEN), receipts: quantity(sums.REC), deliveries: quantity(sums.DEL), transfersIn: quantity(transfersIn), transfersOut: quantity(transfersOut), adjustments: quantity(adjustments),
    bookClosing: quantity(book), measuredClosing: quantity(figures.closing), lossGain: quantity(difference),
    throughput: quantity(throughput), throughputBase: input.limit.base, percent: share?.text ?? null,
    limit: { value: limit.text, unit }, limitSource: input.limit.source, verdict: verdict(difference, limit.value), significance, worksheet: [...worksheet],
  }
}

function verdict(difference: Decimal, limit: Decimal): LossGain['verdict'] {
  if (difference.abs().lessThanOrEqualTo(limit)) return 'within-limit'
  return difference.isNegative() ? 'loss-outside-limit' : 'gain-outside-limit'
}

function sum(values: readonly Decimal[]): Decimal {
  return values.reduce((total, value) => total.plus(value), new Decimal(0))
}
