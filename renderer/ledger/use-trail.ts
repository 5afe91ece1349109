import { useCallback, useEffect, useReducer, useRef, useState } from 'react'
import { useBridge } from '../bridge/BridgeContext.tsx'
import { useAgainWhenBack } from '../bridge/reach.ts'
import { callError } from '../bridge/use-operation.ts'
import type { ReadTrailForm } from './trail-filter.ts'
import { NOTHING_YET, trailReducer, type TrailList } from './trail-list.ts'

const PAGE = 100
const LARGEST_PAGE = 500
/** Whoever types is waited for [ms]. */
const PAUSE = 150

/** The audit trail under a filter, a page at a time: the list, the next page, all of it again. When the head of the ledger moves, what is shown is asked anew. */
export function useTrail(input: ReadTrailForm['input'], head: string): readonly [TrailList, () => void, () => void] {
  const bridge = useBridge()
  const [list, act] = useReducer(trailReducer, NOTHING_YET)
  const [asked, setAsked] = useState(0)
  const shown = useRef(0)
  useEffect(() => { shown.current = list.lines.length }, [list.lines])
  const key = JSON.stringify(input)
  const last = useRef(key)
  useEffect(() => {
    const abort = new AbortController()
    const sameFilter = last.current === key
    last.current = key
    const limit = sameFilter ? Math.min(LARGEST_PAGE, Math.max(PAGE, shown.current)) : PAGE
    const timer = setTimeout(() => {
      act({ do: 'ask' })
      bridge.call('audit-trail', { ...JSON.parse(key), limit }, { signal: abort.signal }).then(
        (page) => { if (!abort.signal.aborted) act({ do: 'first-page', page }) },
        (error: unknown) => { if (!abort.signal.aborted) act({ do: 'failed', error: callError(error), another: !sameFilter }) },
      )
    }, sameFilter ? 0 : PAUSE)
    return () => { clearTimeout(timer); abort.abort() }
  }, [bridge, key, head, asked])
  const next = (): void => {
    if (list.before === null || list.asking) return
    act({ do: 'ask' })
    bridge.call('audit-trail', { ...input, limit: PAGE, before: list.before }).then(
      (page) => act({ do: 'next-page', page }), (error: unknown) => act({ do: 'failed', error: callError(error) }),
    )
  }
  const again = useCallback(() => setAsked((n) => n + 1), [])
  useAgainWhenBack(list.error, !list.asking && list.error === null, again)
  return [list, next, again]
}
