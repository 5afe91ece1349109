import type { ReactNode } from 'react'
import { RefusedByMain } from '../bridge/bridge.ts'
import type { CallState } from '../bridge/use-operation.ts'
import { CallFailed, Findings } from '../parts/Findings.tsx'
import type { SignInFinding } from './sign-in-refused.ts'

/** Why nobody was let in, as far as it stands beside no field. */
export function SignInFailed({ state, others }: { readonly state: CallState<unknown>; readonly others: readonly SignInFinding[] }): ReactNode {
  if (state.state !== 'failed') return null
  if (state.error instanceof RefusedByMain) return others.length === 0 ? null : <div role="alert"><Findings findings={others} /></div>
  return <CallFailed error={state.error} />
}
