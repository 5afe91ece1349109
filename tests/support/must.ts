import type { Finding, Outcome } from '../../core/refusal/index.ts'

/** The value of an outcome that a test counts on; fails with the findings otherwise. */
export function must<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value
  throw new Error(`refused: ${JSON.stringify(outcome.findings, null, 1)}`)
}

/** The findings of an outcome that a test expects to be refused. */
export function findingsOf(outcome: Outcome<unknown>): readonly Finding[] {
  if (outcome.ok) throw new Error('accepted, but a refusal was expected')
  return outcome.findings
}
