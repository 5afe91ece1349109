import type { Finding, Outcome } from './finding.ts'
import { wording } from './wording.ts'

/** Thrown at the edge of an operation only: the input cannot be used, and these are all the reasons. */
export class Refused extends Error {
  readonly findings: readonly Finding[]

  constructor(findings: readonly Finding[]) {
    super(findings.map(wording).join('\n'))
    this.name = 'Refused'
    this.findings = findings
  }
}

/** The value of an outcome; throws {@link Refused} with every finding otherwise. */
export function orRefuse<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value
  throw new Refused(outcome.findings)
}
