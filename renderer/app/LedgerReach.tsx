import { useEffect, useState, type ReactNode } from 'react'
import { useBridge } from '../bridge/BridgeContext.tsx'
import { saveUnsaved } from '../gauge/unsaved-drafts.ts'
import { words } from '../words/en.ts'
import { useTerminal } from './TerminalContext.tsx'
import { useLedgerHead } from './use-ledger-head.ts'

/**
 * Keeps the window at what others posted; says when the ledger is out of reach, and when it is back saves what was typed
 * meanwhile and says that too.
 */
export function LedgerReach(): ReactNode {
  const t = words.app.reach
  const { now, again } = useTerminal()
  const bridge = useBridge()
  const away = useLedgerHead(now.head.hash, again)
  const [saved, setSaved] = useState<readonly string[]>([])
  useEffect(() => {
    if (away !== null) return
    // what cannot be saved now waits for the next time
    void saveUnsaved(localStorage, bridge).then(setSaved, () => undefined)
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
