import { useEffect, useRef, useState, type ReactNode } from 'react'
import { useZone } from '../app/TerminalContext.tsx'
import type { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useBridge } from '../bridge/BridgeContext.tsx'
import { callError } from '../bridge/use-operation.ts'
import { CallFailed } from '../parts/Findings.tsx'
import { Page } from '../parts/Page.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { words } from '../words/en.ts'
import { beginTransfer } from './begin-draft.ts'
import { copyOfTicket } from './copy-of-ticket.ts'

/** Begins the transfer that replaces a voided ticket, from what was observed for that one. */
export function ReplaceTicket({ number }: { readonly number: string }): ReactNode {
  const bridge = useBridge()
  const zone = useZone()
  const [error, setError] = useState<RefusedByMain | FaultInMain | null>(null)
  const begun = useRef(false)
  useEffect(() => {
    if (begun.current) return
    begun.current = true
    bridge.call('read-ticket', { number })
      .then(({ ticket }) => beginTransfer(bridge, copyOfTicket(ticket, zone), { replace: true }))
      .catch((failed: unknown) => setError(callError(failed)))
  }, [bridge, number, zone])
  return <Page title={words.transfer.title}>{error ? <CallFailed error={error} /> : <><p>{words.transfer.replacing(number)}</p><Waiting /></>}</Page>
}
