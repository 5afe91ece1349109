import { useCallback, useEffect, useRef, useState } from 'react'
import type { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useBridge } from '../bridge/BridgeContext.tsx'
import type { DeskNow } from '../bridge/desk.ts'
import { callError } from '../bridge/use-operation.ts'

const EVERY_MS = 10_000

interface Asked {
  readonly now: DeskNow | undefined
  readonly error: RefusedByMain | FaultInMain | undefined
  readonly again: () => void
  readonly changed: (now: DeskNow) => void
  /** Whether this window is covered though the other side does not know of it yet. */
  readonly covered: boolean
  readonly cover: () => void
}

/**
 * The desk, asked again every few seconds and told whether somebody used keyboard or pointer since. Once it is known, a
 * question that fails changes nothing, save that a window at which nobody works is covered in time all the same.
 */
export function useDeskNow(): Asked {
  const bridge = useBridge()
  const [now, setNow] = useState<DeskNow>()
  const [error, setError] = useState<RefusedByMain | FaultInMain>()
  const [covered, setCovered] = useState<'by hand' | 'idle'>()
  const worked = useRef(false)
  const workedAt = useRef(0)
  const idle = useRef(Infinity)
  const cover = useCallback(() => setCovered('by hand'), [])
  const changed = useCallback((to: DeskNow) => { setCovered(undefined); setNow(to) }, [])
  useEffect(() => { idle.current = now?.session ? now.rules.idleMinutes * 60_000 : Infinity }, [now])
  const ask = useCallback(() => {
    const did = worked.current
    worked.current = false
    bridge.call('desk', did ? { worked: true } : {}).then((value) => { setNow(value); setError(undefined) }, (failed: unknown) => {
      setError(callError(failed))
      if (Date.now() - workedAt.current >= idle.current) setCovered((before) => before ?? 'idle')
    })
  }, [bridge])
  useEffect(() => {
    const work = (): void => { worked.current = true; workedAt.current = Date.now() }
    workedAt.current = Date.now()
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
  useEffect(() => {
    if (covered === undefined || now?.session?.locked !== false) return
    // it fails as long as nobody answers; the next answer brings a new desk, and it is tried again
    bridge.call('lock-desk', covered === 'idle' ? { idle: true } : {}).then(changed, () => undefined)
  }, [bridge, covered, now, changed])
  return { now, error, again: ask, changed, covered: covered !== undefined && now?.session !== null, cover }
}
