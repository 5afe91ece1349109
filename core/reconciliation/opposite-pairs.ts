import { Decimal } from '../units/index.ts'
import type { OppositePair, TankReconciliation } from './reconciliation.ts'

/** How far the gain may differ from the loss, as a share of the larger of the two. */
export const PAIR_TOLERANCE = '0.2'

/**
 * Pairs of tanks of one product of which one lost what the other gained: both outside their own limits, in opposite
 * directions, and alike within {@link PAIR_TOLERANCE} of the larger. It is what product that passes from one tank to
 * the other without a ticket looks like: a valve that does not hold, or a transfer that was not written down. The
 * nearest match stands first.
 *   | |loss| − |gain| | ≤ tolerance × max(|loss|, |gain|)
 * @param tanks reconciled tanks
 * @source COMMON-PRACTICE
 */
export function oppositePairs(tanks: readonly TankReconciliation[]): readonly OppositePair[] {
  const losing = tanks.filter((tank) => tank.result.verdict === 'loss-outside-limit')
  const gaining = tanks.filter((tank) => tank.result.verdict === 'gain-outside-limit')
  const pairs = losing.flatMap((loses) => gaining.filter((gains) => gains.product === loses.product).map((gains) => ({ loses, gains, unlike: unlike(loses, gains) })))
  return pairs.filter((pair) => pair.unlike.lessThanOrEqualTo(PAIR_TOLERANCE)).toSorted((a, b) => a.unlike.comparedTo(b.unlike)).map(({ loses, gains }) => ({
    loses: loses.tank, gains: gains.tank, product: loses.product, loss: loses.result.lossGain, gain: gains.result.lossGain,
    losingSteps: counted(loses, -1), gainingSteps: counted(gains, 1),
  }))
}

/** How many of a tank's steps went the given way, of all of them: a leak goes one way, gauging errors go both. */
function counted(tank: TankReconciliation, way: -1 | 1): { readonly thatWay: number; readonly of: number } {
  const changes = tank.steps.map((step) => new Decimal(step.change.value))
  return { thatWay: changes.filter((change) => !change.isZero() && change.isNegative() === (way < 0)).length, of: changes.length }
}

function unlike(loses: TankReconciliation, gains: TankReconciliation): Decimal {
  const loss = new Decimal(loses.result.lossGain.value).abs()
  const gain = new Decimal(gains.result.lossGain.value).abs()
  return loss.minus(gain).abs().div(Decimal.max(loss, gain))
}
