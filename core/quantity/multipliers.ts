import { Decimal } from '../units/index.ts'
import type { Correction } from '../volume-correction/index.ts'

/** The factors by which volumes are multiplied, and what a line says where they are not the printed ones. */
export interface Multipliers { readonly ctl: Decimal; readonly ctpl: Decimal; readonly notes: readonly string[] }

/**
 * Rounded factors as the edition of 2004 multiplies by them, or unrounded ones as the addendum of 2019 does.
 * @source MPMS-11.1-2004 11.1.5.4
 * @source MPMS-11.1-2019
 */
export function multipliers({ volumesBy, ctl, ctpl, factors }: Correction): Multipliers {
  if (volumesBy === 'rounded') return { ctl: ctl.value, ctpl: ctpl.value, notes: [] }
  const unrounded = new Decimal(factors.ctpl)
  return { ctl: new Decimal(factors.ctl), ctpl: unrounded, notes: [`by the unrounded CTPL, ${unrounded.toFixed()} (MPMS-11.1-2019)`] }
}
