import { useCallback, useEffect, useReducer } from 'react'
import { useBridge } from '../bridge/BridgeContext.tsx'
import { callError } from '../bridge/use-operation.ts'
import { entryReducer, NO_ENTRIES, type EntryList } from './entry-list.ts'

const PAGE = 100

/** Entries, newest first; they are asked for again when the head moved. */
export function useEntries(head: string): readonly [EntryList, () => void] {
  const bridge = useBridge()
  const [list, act] = useReducer(entryReducer, NO_ENTRIES)
  const ask = useCallback((before: number | undefined, signal?: AbortSignal) => {
    act({ do: 'ask' })
    bridge.call('list-entries', { limit: PAGE, ...(before === undefined ? {} : { before }) }, signal ? { signal } : {}).then(
      (page) => { if (!signal?.aborted) act({ do: 'page', page, before }) },
      (error: unknown) => { if (!signal?.aborted) act({ do: 'failed', error: callError(error) }) },
    )
  }, [bridge])
  useEffect(() => {
    const abort = new AbortController()
    ask(undefined, abort.signal)
    return () => abort.abort()
  }, [ask, head])
  return [list, () => ask(list.lines.at(-1)?.seq)]
}
