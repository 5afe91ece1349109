import { Decimal } from '../units/index.ts'
import { DISCRIMINATION, type Discriminated, type RoundingRule } from './discrimination.ts'

/** A rounded value, the value it was rounded from, and the rule, for a worksheet line. */
export interface Rounded {
  readonly text: string
  readonly value: Decimal
  /** The value before rounding, as text with all its digits. */
  readonly unrounded: string
  /** The rule in words: `0.01, half away from zero`. */
  readonly rule: string
  readonly clause: RoundingRule['clause']
}

/**
 * Rounds a value to the discrimination of its quantity, once.
 * @param quantity a row of the discrimination table
 * @param value decimal or double; a double is taken as its shortest decimal text
 * @source MPMS-12.1.1 Table 1, discrimination
 */
export function discriminate(quantity: Discriminated, value: Decimal | number): Rounded {
  const { increment, clause } = DISCRIMINATION[quantity]
  const exact = new Decimal(value)
  if (!exact.isFinite()) throw new Error(`${quantity}: ${String(value)} cannot be rounded`)
  const step = new Decimal(increment)
  const steps = exact.div(step).toDecimalPlaces(0, Decimal.ROUND_HALF_UP)
  const rounded = steps.isZero() ? new Decimal(0) : steps.times(step)
  return { text: rounded.toFixed(step.decimalPlaces()), value: rounded, unrounded: exact.toFixed(), rule: `${increment}, half away from zero`, clause }
}

/** A double for display only, with a number of decimals; never for anything that is booked. */
export function display(value: number, decimals: number): string {
  return new Decimal(value).toFixed(decimals, Decimal.ROUND_HALF_UP)
}
