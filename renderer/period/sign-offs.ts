import type { OutputOf } from '../../main/operations/contracts/index.ts'

export type FoundCheck = OutputOf<'closing-checks'>['checks'][number]
/** Reasons by the check that they sign off. */
export type Reasons = Readonly<Record<string, string>>

/** Checks that do not hold, and how many of them have a reason beside them. */
export function standingOfChecks(checks: readonly FoundCheck[], reasons: Reasons): { readonly failing: number; readonly signed: number; readonly never: boolean } {
  const failing = checks.filter(({ holds }) => !holds)
  return { failing: failing.length, signed: failing.filter(({ check }) => (reasons[check] ?? '').trim() !== '').length, never: failing.some(({ maySignOff }) => !maySignOff) }
}

/** The reasons of checks that still do not hold, as the operation takes them. */
export function signOffsOf(checks: readonly FoundCheck[], reasons: Reasons): { check: string; reason: string }[] {
  return checks.filter(({ holds }) => !holds).flatMap(({ check }) => {
    const reason = (reasons[check] ?? '').trim()
    return reason === '' ? [] : [{ check, reason }]
  })
}
