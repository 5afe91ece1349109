import { use, useEffect, useRef, useState } from 'react'
import { FaultInMain } from '../bridge/bridge.ts'
import { useBridge } from '../bridge/BridgeContext.tsx'
import { ReachContext } from '../bridge/reach.ts'

const EVERY_MS = 2_000

/**
 * Asks again and again where the ledger ends, and tells when others posted, or when it is within reach again; what broke
 * meanwhile is asked again then. It goes on while nobody is at the desk, and is no sign of anybody.
 * @param known the head that the window shows
 * @returns why the ledger cannot be reached, and what to do; null as long as it can
 */
export function useLedgerHead(known: string, onMoved: () => void): string | null {
  const bridge = useBridge()
  const reach = use(ReachContext)
  const [away, setAway] = useState<string | null>(null)
  const now = useRef({ known, onMoved, away })
  useEffect(() => { now.current = { known, onMoved, away } }, [known, onMoved, away])
  useEffect(() => {
    let stopped = false
    let timer: ReturnType<typeof setTimeout>
    const next = (): void => { if (!stopped) timer = setTimeout(() => void ask(), EVERY_MS) }
    const ask = async (): Promise<void> => {
      try {
        const { hash } = await bridge.call('ledger-head', {})
        if (stopped) return
        const wasAway = now.current.away !== null
        setAway(null)
        reach?.answered(wasAway)
        if (wasAway || hash !== now.current.known) now.current.onMoved()
      } catch (error) {
        // a locked desk is refused its answer, and the ledger is none the worse
        if (!stopped && error instanceof FaultInMain) setAway(error.message)
      }
      next()
    }
    next()
    return () => {
      stopped = true
      clearTimeout(timer)
    }
  }, [bridge, reach])
  return away
}
