import { useEffect, useRef, useState, type ReactNode } from 'react'
import { addressOf, goTo, type Route } from '../app/route.ts'
import type { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useBridge } from '../bridge/BridgeContext.tsx'
import { callError, useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { Page } from '../parts/Page.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { words } from '../words/en.ts'
import { keptVerification, newVerification, verifyFormSchema } from './verify-form.ts'
import { VerifySheet } from './VerifySheet.tsx'

/** `#/gauge/verify?tank=T-101` · `#/gauge/verify/<draft>`: a verification of an automatic gauge, kept as it is written. */
export function VerifyJob({ route }: { readonly route: Route }): ReactNode {
  const [, id] = route.rest
  const tank = route.query['tank'] ?? ''
  return id === undefined ? <BeginVerification key={tank} tank={tank} /> : <OpenVerification key={id} id={id} />
}

/** Goes on with what was begun for the tank, or begins. */
function BeginVerification({ tank }: { readonly tank: string }): ReactNode {
  const bridge = useBridge()
  const [error, setError] = useState<RefusedByMain | FaultInMain | null>(null)
  const begun = useRef(false)
  useEffect(() => {
    if (begun.current) return
    begun.current = true
    const begin = async (): Promise<void> => {
      const { drafts } = await bridge.call('list-drafts', {})
      const id = keptVerification(drafts, tank) ?? crypto.randomUUID()
      if (!drafts.some((draft) => draft.id === id)) await bridge.call('save-draft', { id, kind: 'verification', title: words.gauge.verify.draftTitle(tank, ''), body: newVerification(tank) })
      goTo(addressOf('gauge', ['verify', id]), { replace: true })
    }
    begin().catch((failed: unknown) => setError(callError(failed)))
  }, [bridge, tank])
  return <Page title={words.gauge.verify.title}>{error ? <CallFailed error={error} /> : <Waiting />}</Page>
}

function OpenVerification({ id }: { readonly id: string }): ReactNode {
  const [state, again] = useQuery('list-drafts', {})
  const { title } = words.gauge.verify
  if (state.state === 'failed') return <Page title={title}><CallFailed error={state.error} onAgain={again} /></Page>
  if (state.state !== 'done') return <Page title={title}><Waiting /></Page>
  const draft = state.value.drafts.find((kept) => kept.id === id)
  const form = verifyFormSchema.safeParse(draft?.body)
  if (form.success) return <VerifySheet id={id} start={form.data} />
  return (
    <Page title={title}>
      <p>{draft ? words.transfer.draftUnreadable : words.transfer.draftGone}</p>
      <Button onClick={() => goTo(addressOf('transfer', ['start']))}>{words.transfer.backToStart}</Button>
    </Page>
  )
}
