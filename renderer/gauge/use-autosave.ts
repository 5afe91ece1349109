import { useCallback, useEffect, useRef, useState } from 'react'
import type { InputOf } from '../../main/operations/contracts/index.ts'
import { useBridge } from '../bridge/BridgeContext.tsx'

export type Draft = InputOf<'save-draft'>

/** Whether what is on the sheet is also kept. */
export type Kept = { readonly state: 'idle' | 'saving' | 'failed' } | { readonly state: 'saved'; readonly at: string }

const QUIET_MS = 400

/**
 * Keeps a draft a moment after each change, and at once when the page goes away. The second value holds it back while the
 * draft is being booked or discarded, and lets it go on when that came to nothing.
 */
export function useAutosave(draft: Draft): readonly [Kept, (hold: boolean) => void] {
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
    setKept({ state: 'saving' })
    try {
      const { savedAt } = await bridge.call('save-draft', JSON.parse(now) as Draft, { outlivesWindow })
      setKept({ state: 'saved', at: savedAt })
    } catch {
      stored.current = ''
      setKept({ state: 'failed' })
    }
  }, [bridge])
  useEffect(() => {
    latest.current = text
    const timer = setTimeout(() => void save(false), QUIET_MS)
    return () => clearTimeout(timer)
  }, [text, save])
  useEffect(() => {
    const leave = (): void => void save(true)
    window.addEventListener('pagehide', leave)
    return () => {
      window.removeEventListener('pagehide', leave)
      leave()
    }
  }, [save])
  return [kept, useCallback((hold: boolean) => { held.current = hold }, [])]
}
