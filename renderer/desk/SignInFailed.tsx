import type { ReactNode } from 'react'
import type { CallState } from '../bridge/use-operation.ts'
import { CallFailed } from '../parts/Findings.tsx'

/** Why nobody was let in. */
export function SignInFailed({ state }: { readonly state: CallState<unknown> }): ReactNode {
  return state.state === 'failed' ? <CallFailed error={state.error} /> : null
}
