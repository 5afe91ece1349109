import { useCallback, useEffect, useReducer, useRef } from 'react'
import { useBridge } from '../bridge/BridgeContext.tsx'
import { callError } from '../bridge/use-operation.ts'
import { entryReducer, NO_ENTRIES, type EntryList } from './entry-list.ts'

const PAGE = 100
const LARGEST_PAGE = 500

/** Entries, newest first; when the head moved, those after it are asked for and stand above those that are shown. */
export function useEntries(head: string): readonly [EntryList, () => void] {
  const bridge = useBridge()
  const [list, act] = useReducer(entryReducer, NO_ENTRIES)
  const ask = useCallback((before: number | undefined, signal?: AbortSignal, limit = PAGE) => {
    act({ do: 'ask' })
    bridge.call('list-entries', { limit, ...(before === undefined ? {} : { before }) }, signal ? { signal } : {}).then(
      (page) => { if (!signal?.aborted) act({ do: 'page', page, before }) },
      (error: unknown) => { if (!signal?.aborted) act({ do: 'failed', error: callError(error) }) },
    )
  }, [bridge])
  const shown = useRef(0)
  useEffect(() => { shown.current = list.lines.length }, [list.lines])
  useEffect(() => {
    const abort = new AbortController()
    ask(undefined, abort.signal, Math.min(LARGEST_PAGE, Math.max(PAGE, shown.current)))
    return () => abort.abort()
  }, [ask, head])
  return [list, () => ask(list.lines.at(-1)?.seq)]
}
