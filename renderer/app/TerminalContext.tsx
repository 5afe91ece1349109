import { use, useCallback, useEffect, useState, type ReactNode } from 'react'
import { useQuery } from '../bridge/use-operation.ts'
import { CallFailed } from '../parts/Findings.tsx'
import { words } from '../words/en.ts'
import { TerminalContext, type TerminalHold, type TerminalNow } from './terminal-hold.ts'
import { useLedgerHead } from './use-ledger-head.ts'

export { TerminalContext, type TerminalHold, type TerminalNow } from './terminal-hold.ts'

/** Asks for the terminal once for the whole window; what stands below may rely on it, and stays when the ledger is out of reach for a while. */
export function TerminalProvider({ children }: { readonly children: ReactNode }): ReactNode {
  const [state, again] = useQuery('terminal', {})
  const [last, setLast] = useState<TerminalNow | null>(null)
  useEffect(() => { if (state.state === 'done') setLast(state.value) }, [state])
  const now = state.state === 'done' ? state.value : last
  if (now === null && state.state === 'failed') return <div className="alone"><CallFailed error={state.error} onAgain={again} /><WatchesForLedger /></div>
  if (now === null) return <p className="alone" role="status">{words.app.loading}</p>
  return <TerminalContext value={{ now, again }}>{children}</TerminalContext>
}

/** Asks where the ledger ends as long as nothing else does. */
function WatchesForLedger(): ReactNode {
  useLedgerHead('', useCallback(() => undefined, []))
  return null
}

export function useTerminal(): TerminalHold {
  const held = use(TerminalContext)
  if (!held) throw new Error('useTerminal needs a TerminalProvider above it')
  return held
}

/** The terminal's zone; UTC as long as no terminal was entered. */
export function useZone(): string {
  return useTerminal().now.terminal?.zone ?? 'UTC'
}
