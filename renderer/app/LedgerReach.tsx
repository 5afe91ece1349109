import { createContext, use, useEffect, useRef, useState, type ReactNode } from 'react'
import { useBridge } from '../bridge/BridgeContext.tsx'
import { saveUnsaved } from '../gauge/unsaved-drafts.ts'
import { words } from '../words/en.ts'
import { useTerminal } from './TerminalContext.tsx'
import { useLedgerHead } from './use-ledger-head.ts'

/** Titles of drafts of an earlier window that were saved when this one was opened. */
const SavedAtStart = createContext<readonly string[]>([])

/**
 * Keeps the window at what others posted; says when the ledger is out of reach, and when it is back saves what was typed
 * meanwhile and says that too.
 */
export function LedgerReach(): ReactNode {
  const t = words.app.reach
  const { now, again } = useTerminal()
  const bridge = useBridge()
  const away = useLedgerHead(now.head.hash, again)
  const [saved, setSaved] = useState<readonly string[]>(use(SavedAtStart))
  const wasAway = useRef(false)
  useEffect(() => {
    if (wasAway.current && away === null) {
      // what cannot be saved now waits for the next time
      void saveUnsaved(localStorage, bridge).then(setSaved, () => undefined)
    }
    wasAway.current = away !== null
  }, [away, bridge])
  return (
    <div className="reach" role="status">
      {away !== null && <p className="reach-away">{away} {t.typed}</p>}
      {away === null && saved.length > 0 && (
        <p>{t.saved(saved.join(', '))} <button type="button" className="plain-button" onClick={() => setSaved([])}>{t.seen}</button></p>
      )}
    </div>
  )
}

/** Saves what an earlier window could not, before any sheet of this one opens the draft. */
export function UnsavedFirst({ children }: { readonly children: ReactNode }): ReactNode {
  const bridge = useBridge()
  const [saved, setSaved] = useState<readonly string[] | null>(null)
  useEffect(() => {
    if (saved === null) void saveUnsaved(localStorage, bridge).then(setSaved, () => setSaved([]))
  }, [bridge, saved])
  return saved === null ? <p className="alone" role="status">{words.app.loading}</p> : <SavedAtStart value={saved}>{children}</SavedAtStart>
}
