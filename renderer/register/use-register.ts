import { useCallback, useEffect, useReducer, useRef, useState } from 'react'
import type { InputOf } from '../../main/operations/contracts/index.ts'
import { useBridge } from '../bridge/BridgeContext.tsx'
import { useAgainWhenBack } from '../bridge/reach.ts'
import { callError } from '../bridge/use-operation.ts'
import { NOTHING_YET, registerReducer, type RegisterLine, type RegisterList } from './register-list.ts'

const PAGE = 100
const LARGEST_PAGE = 1000

interface Register {
  readonly list: RegisterList
  /** Asks for the page after what is shown. */
  readonly next: () => void
  /** Asks anew, as after a ticket was voided. */
  readonly again: () => void
  /** Every line that the filter lets through, shown or not. */
  readonly all: () => Promise<readonly RegisterLine[]>
}

/** The register under a filter, a page at a time. When the head of the ledger moves, what is shown is asked anew, as many lines as there are. */
export function useRegister(input: InputOf<'list-tickets'>, head: string): Register {
  const bridge = useBridge()
  const [list, act] = useReducer(registerReducer, NOTHING_YET)
  const [asked, setAsked] = useState(0)
  const key = JSON.stringify(input)
  useEffect(() => {
    const abort = new AbortController()
    act({ do: 'ask' })
    bridge.call('list-tickets', { ...JSON.parse(key), limit: PAGE }, { signal: abort.signal }).then(
      (page) => { if (!abort.signal.aborted) act({ do: 'first-page', page }) },
      (error: unknown) => { if (!abort.signal.aborted) act({ do: 'failed', error: callError(error) }) },
    )
    return () => abort.abort()
  }, [bridge, key, asked])
  const shown = useRef({ head, lines: 0 })
  useEffect(() => { shown.current.lines = list.lines.length }, [list.lines])
  useEffect(() => {
    if (shown.current.head === head) return
    shown.current.head = head
    const abort = new AbortController()
    bridge.call('list-tickets', { ...JSON.parse(key), limit: Math.min(LARGEST_PAGE, Math.max(PAGE, shown.current.lines)) }, { signal: abort.signal }).then(
      (page) => { if (!abort.signal.aborted) act({ do: 'refreshed', page }) },
      (error: unknown) => { if (!abort.signal.aborted) act({ do: 'failed', error: callError(error) }) },
    )
    return () => abort.abort()
  }, [bridge, key, head])
  const next = (): void => {
    const last = list.lines.at(-1)
    if (!last || list.asking) return
    act({ do: 'ask' })
    bridge.call('list-tickets', { ...input, limit: PAGE, before: last.seq }).then(
      (page) => act({ do: 'next-page', page }), (error: unknown) => act({ do: 'failed', error: callError(error) }),
    )
  }
  const all = async (): Promise<readonly RegisterLine[]> => {
    const lines: RegisterLine[] = []
    for (let more = true; more;) {
      const before = lines.at(-1)?.seq
      const page = await bridge.call('list-tickets', { ...input, limit: LARGEST_PAGE, ...(before === undefined ? {} : { before }) })
      lines.push(...page.tickets)
      more = page.more
    }
    return lines
  }
  const again = useCallback(() => setAsked((n) => n + 1), [])
  useAgainWhenBack(list.error, !list.asking && list.error === null, again)
  return { list, next, all, again }
}
