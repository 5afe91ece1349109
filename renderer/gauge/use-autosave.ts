import { useCallback, useEffect, useRef, useState } from 'react'
import { RefusedByMain } from '../bridge/bridge.ts'
import { useBridge } from '../bridge/BridgeContext.tsx'
import { dropUnsaved, keepUnsaved, takeOnSheet, type Draft } from './unsaved-drafts.ts'

export type { Draft }

/** Whether what is on the sheet is also kept; `here` is in this window's own storage, as long as the ledger takes nothing. */
export type Kept = { readonly state: 'idle' | 'saving' | 'here' | 'failed' } | { readonly state: 'saved'; readonly at: string }

const QUIET_MS = 400
/** How often it is tried again while the ledger takes nothing. */
const AGAIN_MS = 3_000

/**
 * Keeps a draft a moment after each change, and at once when the page goes away; what the ledger does not take waits in
 * the window's storage and is saved when it does. The second value holds it back while the draft is being booked or
 * discarded, and lets it go on when that came to nothing; the third keeps it now.
 */
export function useAutosave(draft: Draft): readonly [Kept, (hold: boolean) => void, () => Promise<void>] {
  const bridge = useBridge()
  const [kept, setKept] = useState<Kept>({ state: 'idle' })
  const text = JSON.stringify(draft)
  const stored = useRef(text)
  const latest = useRef(text)
  const held = useRef(false)
  const save = useCallback(async (outlivesWindow: boolean) => {
    const now = latest.current
    if (held.current || now === stored.current) return
    stored.current = now
    setKept((before) => (before.state === 'here' ? before : { state: 'saving' }))
    const asDraft = JSON.parse(now) as Draft
    // nobody hears the answer of a window that is gone
    if (outlivesWindow) keepUnsaved(localStorage, asDraft, new Date().toISOString())
    try {
      const { savedAt } = await bridge.call('save-draft', asDraft, { outlivesWindow })
      dropUnsaved(localStorage, asDraft.id)
      setKept({ state: 'saved', at: savedAt })
    } catch (error) {
      stored.current = ''
      const waits = keepUnsaved(localStorage, asDraft, new Date().toISOString())
      setKept({ state: waits && canWait(error) ? 'here' : 'failed' })
    }
  }, [bridge])
  useEffect(() => {
    latest.current = text
    const timer = setTimeout(() => void save(false), QUIET_MS)
    return () => clearTimeout(timer)
  }, [text, save])
  useEffect(() => {
    if (kept.state !== 'here') return
    const timer = setInterval(() => void save(false), AGAIN_MS)
    return () => clearInterval(timer)
  }, [kept.state, save])
  useEffect(() => {
    const leave = (): void => void save(true)
    window.addEventListener('pagehide', leave)
    return () => {
      window.removeEventListener('pagehide', leave)
      leave()
    }
  }, [save])
  const { id } = draft
  useEffect(() => takeOnSheet(id), [id])
  return [kept, useCallback((hold: boolean) => {
    held.current = hold
    if (hold) dropUnsaved(localStorage, id)
  }, [id]), useCallback(() => save(false), [save])]
}

/** A server that is away comes back, and a locked desk is opened again; a draft that is refused for itself stays refused. */
function canWait(error: unknown): boolean {
  return !(error instanceof RefusedByMain) || error.findings.every(({ code }) => code.startsWith('session-'))
}
