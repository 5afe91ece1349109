import type { OutputOf } from '../../main/operations/contracts/index.ts'

export type Checked = OutputOf<'verify-document'>

/** Checks that do not hold come first, the rest in the order they were made. */
export function inOrderOfConcern(checks: Checked['checks']): Checked['checks'] {
  return [...checks.filter((check) => !check.holds), ...checks.filter((check) => check.holds)]
}

/** How many of the checks hold. */
export function tally(checks: Checked['checks']): { readonly holding: number; readonly of: number } {
  return { holding: checks.filter((check) => check.holds).length, of: checks.length }
}
