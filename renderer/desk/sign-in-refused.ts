import { RefusedByMain } from '../bridge/bridge.ts'
import type { CallState } from '../bridge/use-operation.ts'
import { placeFindings, type PlacedOnFields } from '../parts/place-findings.ts'
import { words } from '../words/en.ts'

export type SignInFinding = RefusedByMain['findings'][number]

/** Why nobody was let in, beside the passphrase where it is for that. */
export function signInRefused(state: CallState<unknown>, field: string): PlacedOnFields<SignInFinding> {
  const findings = state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : []
  return placeFindings(findings, { passphrase: { id: field, label: words.desk.signIn.passphrase } })
}
