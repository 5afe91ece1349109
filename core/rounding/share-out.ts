import { Decimal } from '../units/index.ts'
import { DISCRIMINATION, type Discriminated } from './discrimination.ts'

/** What one weight gets of a total that is shared out. */
export interface Share {
  readonly text: string
  readonly value: Decimal
  /** total × weight / sum of weights, before rounding, all digits. */
  readonly unrounded: string
}

/** How shares are rounded so that they add up. */
export const LARGEST_REMAINDER = 'towards 0, then one step more to the largest remainders until the total is reached; of equal ones the first'

/**
 * Shares a total out by weights so that the shares add up to it to the last digit: each quota rounded towards 0, and the
 * steps that are left over given to the largest remainders.
 * Throws where the total is no whole number of steps or no weight is more than 0.
 * @param quantity a row of the discrimination table: its increment is the step
 * @param total signed, a whole number of steps
 * @param weights 0 or more
 * @source COMMON-PRACTICE largest remainder
 */
export function shareOut(quantity: Discriminated, total: Decimal, weights: readonly Decimal[]): readonly Share[] {
  const step = new Decimal(DISCRIMINATION[quantity].increment)
  const steps = total.div(step)
  const sum = weights.reduce((all, weight) => all.plus(weight), new Decimal(0))
  if (!steps.isInteger() || sum.lessThanOrEqualTo(0) || weights.some((weight) => weight.isNegative() && !weight.isZero())) throw new Error(`${total.toFixed()} cannot be shared out in steps of ${step.toFixed()}`)
  // remainders are compared over one denominator: quotients of long divisions would tie by chance
  const quotas = weights.map((weight) => {
    const parts = steps.times(weight)
    const whole = parts.divToInt(sum)
    return { whole, rest: parts.minus(whole.times(sum)).abs() }
  })
  const left = steps.minus(quotas.reduce((all, { whole }) => all.plus(whole), new Decimal(0)))
  const order = quotas.map(({ rest }, i) => ({ rest, i })).toSorted((a, b) => b.rest.comparedTo(a.rest) || a.i - b.i)
  const more = new Set(order.slice(0, left.abs().toNumber()).map(({ i }) => i))
  return quotas.map(({ whole }, i) => {
    const share = (more.has(i) ? whole.plus(left.isNegative() ? -1 : 1) : whole).times(step)
    const value = share.isZero() ? new Decimal(0) : share
    return { value, text: value.toFixed(step.decimalPlaces()), unrounded: total.times(weights[i] ?? 0).div(sum).toFixed() }
  })
}
