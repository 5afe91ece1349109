import { useEffect, useMemo, useRef, type ReactNode } from 'react'
import { useBridge, BridgeProvider } from '../bridge/BridgeContext.tsx'
import { FaultInMain } from '../bridge/bridge.ts'
import { DeskContext, type DeskNow } from '../bridge/desk.ts'
import { CallFailed } from '../parts/Findings.tsx'
import { words } from '../words/en.ts'
import { LockPage } from './LockPage.tsx'
import { waitingBridge } from './locked-bridge.ts'
import { SignInPage } from './SignInPage.tsx'
import { useDeskNow } from './use-desk-now.ts'

type Waiting = { readonly session: string; readonly resolve: () => void; readonly reject: (error: Error) => void }

/** Lets the window through to whoever is signed in; covers it while the desk is locked, and keeps what stands under it. */
export function DeskProvider({ children }: { readonly children: ReactNode }): ReactNode {
  const bridge = useBridge()
  const { now, error, again, changed, covered, cover } = useDeskNow()
  const waiting = useRef<readonly Waiting[]>([])
  const session = sessionKey(now)
  const latest = useRef(session)
  const locked = now?.session?.locked === true
  useEffect(() => {
    latest.current = session
    if (locked) return
    const all = waiting.current
    waiting.current = []
    for (const one of all) {
      if (one.session === session) one.resolve()
      else one.reject(new FaultInMain(words.desk.lock.title))
    }
  }, [session, locked])
  const through = useMemo(() => waitingBridge(bridge, {
    left: again,
    opened: () => new Promise((resolve, reject) => {
      waiting.current = [...waiting.current, { session: latest.current, resolve, reject }]
      again()
    }),
  }), [bridge, again])
  const hold = useMemo(() => (now === undefined ? null : { now, changed, cover }), [now, changed, cover])
  if (hold === null) return error === undefined ? <p className="alone" role="status">{words.app.loading}</p> : <div className="alone"><CallFailed error={error} onAgain={again} /></div>
  return (
    <DeskContext value={hold}>
      {hold.now.peopleOnRecord && hold.now.session === null ? <SignInPage /> : <BridgeProvider key={session} bridge={through}>{children}</BridgeProvider>}
      {(locked || covered) && hold.now.session && <LockPage session={hold.now.session} />}
    </DeskContext>
  )
}

/** One session of one person: what stands in the window belongs to it. */
function sessionKey(now: DeskNow | undefined): string {
  return now?.session ? `${now.session.person.id} ${now.session.openedAt}` : ''
}
