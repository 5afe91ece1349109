import { Refused, type Finding, type Outcome } from '../../core/refusal/index.ts'

/** What a call is refused for; any other end of it is an error. */
export async function refusalOf(call: Promise<unknown>): Promise<readonly Finding[]> {
  try {
    await call
  } catch (error) {
    if (error instanceof Refused) return error.findings
    throw error
  }
  throw new Error('It was not refused.')
}

/** The codes of findings, of a refusal or of an outcome; none where all is well. */
export function codesOf(found: readonly Finding[] | Outcome<unknown>): readonly string[] {
  const findings = 'ok' in found ? (found.ok ? [] : found.findings) : found
  return findings.map((finding) => finding.code)
}
