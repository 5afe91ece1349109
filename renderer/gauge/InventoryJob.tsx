import { useEffect, useRef, useState, type ReactNode } from 'react'
import { addressOf, goTo, type Route } from '../app/route.ts'
import { useTerminal } from '../app/TerminalContext.tsx'
import type { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useBridge } from '../bridge/BridgeContext.tsx'
import { callError, useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { Page } from '../parts/Page.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { LogPage } from '../probe/LogPage.tsx'
import { ProbePage } from '../probe/ProbePage.tsx'
import { words } from '../words/en.ts'
import { inventoryFormSchema, newInventory } from './inventory-form.ts'
import { InventorySheet } from './InventorySheet.tsx'
import { VerifyJob } from './VerifyJob.tsx'

/** `#/gauge/new?tank=T-101` · `#/gauge/<draft>` · `#/gauge/verify?tank=T-101` · `#/gauge/verify/<draft>` · `#/gauge/probe?tank=T-101` · `#/gauge/log?tank=T-101` */
export function InventoryJob({ route }: { readonly route: Route }): ReactNode {
  const [id = 'new'] = route.rest
  if (id === 'probe') return <ProbePage route={route} />
  if (id === 'log') return <LogPage route={route} />
  if (id === 'verify') return <VerifyJob route={route} />
  return id === 'new' ? <BeginInventory key={route.query['tank'] ?? ''} tank={route.query['tank'] ?? ''} /> : <OpenInventory key={id} id={id} />
}

function BeginInventory({ tank }: { readonly tank: string }): ReactNode {
  const { now } = useTerminal()
  const bridge = useBridge()
  const [error, setError] = useState<RefusedByMain | FaultInMain | null>(null)
  const begun = useRef(false)
  const product = now.tanks.find(({ code }) => code === tank)?.product ?? ''
  useEffect(() => {
    if (begun.current) return
    begun.current = true
    const id = crypto.randomUUID()
    bridge.call('save-draft', { id, kind: 'inventory', title: words.gauge.inventoryTitle(tank), body: newInventory(tank, product) })
      .then(() => goTo(addressOf('gauge', [id]), { replace: true }), (failed: unknown) => setError(callError(failed)))
  }, [bridge, tank, product])
  return <Page title={words.gauge.title}>{error ? <CallFailed error={error} /> : <Waiting />}</Page>
}

function OpenInventory({ id }: { readonly id: string }): ReactNode {
  const [state, again] = useQuery('list-drafts', {})
  if (state.state === 'failed') return <Page title={words.gauge.title}><CallFailed error={state.error} onAgain={again} /></Page>
  if (state.state !== 'done') return <Page title={words.gauge.title}><Waiting /></Page>
  const draft = state.value.drafts.find((kept) => kept.id === id)
  const form = inventoryFormSchema.safeParse(draft?.body)
  if (form.success) return <InventorySheet id={id} start={form.data} />
  return (
    <Page title={words.gauge.title}>
      <p>{draft ? words.transfer.draftUnreadable : words.transfer.draftGone}</p>
      <Button onClick={() => goTo(addressOf('transfer', ['start']))}>{words.transfer.backToStart}</Button>
    </Page>
  )
}
