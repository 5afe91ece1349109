import { useCallback, useEffect, useRef, useState } from 'react'
import type { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useBridge } from '../bridge/BridgeContext.tsx'
import type { DeskNow } from '../bridge/desk.ts'
import { callError } from '../bridge/use-operation.ts'

const EVERY_MS = 10_000

interface Asked { readonly now: DeskNow | undefined; readonly error: RefusedByMain | FaultInMain | undefined; readonly again: () => void; readonly changed: (now: DeskNow) => void }

/**
 * The desk, asked again every few seconds and told whether somebody used keyboard or pointer since. Once it is known, a
 * question that fails changes nothing.
 */
export function useDeskNow(): Asked {
  const bridge = useBridge()
  const [now, setNow] = useState<DeskNow>()
  const [error, setError] = useState<RefusedByMain | FaultInMain>()
  const worked = useRef(false)
  const ask = useCallback(() => {
    const did = worked.current
    worked.current = false
    bridge.call('desk', did ? { worked: true } : {}).then((value) => { setNow(value); setError(undefined) }, (failed: unknown) => setError(callError(failed)))
  }, [bridge])
  useEffect(() => {
    const work = (): void => { worked.current = true }
    ask()
    const timer = setInterval(ask, EVERY_MS)
    window.addEventListener('keydown', work, true)
    window.addEventListener('pointerdown', work, true)
    return () => {
      clearInterval(timer)
      window.removeEventListener('keydown', work, true)
      window.removeEventListener('pointerdown', work, true)
    }
  }, [ask])
  return { now, error, again: ask, changed: setNow }
}
