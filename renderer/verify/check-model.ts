import type { OutputOf } from '../../main/operations/contracts/index.ts'

export type Checked = OutputOf<'verify-document'>

/** Checks that do not hold come first, the rest in the order they were made. */
export function inOrderOfConcern(checks: Checked['checks']): Checked['checks'] {
  return [...checks.filter((check) => !check.holds), ...checks.filter((check) => check.holds)]
}
