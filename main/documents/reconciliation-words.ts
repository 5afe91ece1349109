import type { OppositePair, Reconciliation, TankReconciliation } from '../../core/reconciliation/index.ts'
import { printedUnit } from '../../core/units/index.ts'
import type { Quantity } from '../../core/worksheet/index.ts'
import { signed } from './parts/words.ts'

type Result = TankReconciliation['result']

const VERDICTS: { readonly [V in Result['verdict']]: string } = { 'within-limit': 'within limit', 'loss-outside-limit': 'LOSS OUTSIDE LIMIT', 'gain-outside-limit': 'GAIN OUTSIDE LIMIT' }
const BASES: { readonly [B in Result['throughputBase']]: string } = {
  deliveries: 'deliveries', receipts: 'receipts', 'receipts-and-deliveries': 'receipts and deliveries', 'opening-and-receipts': 'opening inventory and receipts',
}

export function verdictWords(verdict: Result['verdict']): string {
  return VERDICTS[verdict]
}

export function baseWords(base: Result['throughputBase']): string {
  return BASES[base]
}

/** A figure in print: its digits as booked, a true minus sign, its unit. */
export function figureWords({ value, unit }: Quantity): string {
  return `${signed(value)} ${printedUnit(unit)}`
}

/** What stands outside its limit, in a sentence or two. */
export function verdictSentence({ tanks, products, missing }: Reconciliation): string {
  const named = (tank: TankReconciliation): string => `${tank.tank} ${tank.result.verdict === 'loss-outside-limit' ? 'lost' : 'gained'} ${figureWords(size(tank.result.lossGain))}`
  const outside = tanks.filter((tank) => tank.result.verdict !== 'within-limit')
  const productsOutside = products.filter((product) => product.result.verdict !== 'within-limit').map((product) => product.productName)
  const aboutTanks = outside.length === 0 ? 'Every tank that could be reconciled is within its limit.' : `Outside their limits: ${outside.map(named).join(', ')}.`
  const aboutProducts = productsOutside.length === 0 ? 'Every product taken as a whole is within its limit.' : `Products outside their limits: ${productsOutside.join(', ')}.`
  const aboutMissing = missing.length === 0 ? '' : ` Not reconciled: ${missing.map((one) => one.tank).join(', ')}.`
  return `${aboutTanks} ${aboutProducts}${aboutMissing}`
}

/** What a pair of opposite tanks says, and what to do about it. */
export function pairSentences(pair: OppositePair, { products }: Pick<Reconciliation, 'products'>): readonly string[] {
  const product = products.find((one) => one.product === pair.product)
  const { losingSteps, gainingSteps } = pair
  const whole = product?.result.verdict === 'within-limit'
    ? `${product.productName} as a whole is within its limit, so that its total alone would have shown nothing.` : 'The product as a whole is outside its limit as well.'
  const steady = losingSteps === undefined || gainingSteps === undefined ? []
    : [`${pair.loses} went down in ${String(losingSteps.thatWay)} of its ${String(losingSteps.of)} unbooked steps, ${pair.gains} up in ${String(gainingSteps.thatWay)} of its ${String(gainingSteps.of)}: gauging errors go both ways, what passes through a line goes one way.`]
  return [
    `${pair.loses} lost ${figureWords(size(pair.loss))} of ${product?.productName ?? pair.product} that no ticket accounts for, and ${pair.gains} gained ${figureWords(pair.gain)}.`,
    whole, ...steady,
    `Product has most likely passed from ${pair.loses} into ${pair.gains} without a ticket: look for a valve between the two that does not hold, or for a transfer that was not written down.`,
    `Until that is proved, treat the loss of ${pair.loses} as a possible leak and follow the procedures of the site.`,
  ]
}

function size({ value, unit }: Quantity): Quantity {
  return { value: value.replace(/^-/, ''), unit }
}

/** A name for the files of a period: `reconciliation-CPT-2026-09-01-to-2026-10-01`. */
export function fileStem({ terminal, from, to }: Reconciliation): string {
  return `reconciliation-${terminal.code}-${from.slice(0, 10)}-to-${to.slice(0, 10)}`
}
