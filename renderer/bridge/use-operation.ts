import { useCallback, useEffect, useRef, useState } from 'react'
import type { InputOf, OperationName, OutputOf, Progress } from '../../main/operations/contracts/index.ts'
import { CallCancelled, FaultInMain, RefusedByMain } from './bridge.ts'
import { useBridge } from './BridgeContext.tsx'
import { useLeave } from './desk.ts'
import { prepare } from './prepare.ts'
import { useAgainWhenBack } from './reach.ts'

/** Where a call stands. */
export type CallState<T> =
  | { readonly state: 'idle' }
  | { readonly state: 'running'; readonly step: Progress | null }
  | { readonly state: 'done'; readonly value: T }
  | { readonly state: 'failed'; readonly error: RefusedByMain | FaultInMain }
  /** Not done: it waits for somebody else to approve it, and would post this. */
  | { readonly state: 'prepared'; readonly posts: readonly string[] }

/** What went wrong, as one of the errors a component can show. */
export function callError(error: unknown): RefusedByMain | FaultInMain {
  if (error instanceof RefusedByMain || error instanceof FaultInMain) return error
  return new FaultInMain(error instanceof Error ? error.message : String(error))
}

/**
 * An operation started by the person: `const [state, run, cancel] = useAction('void-ticket')`. `run` gives the value,
 * or undefined when it failed, was cancelled, or was only prepared for somebody else; the state then says why.
 */
export function useAction<N extends OperationName>(name: N): readonly [
  CallState<OutputOf<N>>, (input: InputOf<N>) => Promise<OutputOf<N> | undefined>, () => void,
] {
  const bridge = useBridge()
  const { prepares } = useLeave(name)
  const [state, setState] = useState<CallState<OutputOf<N>>>({ state: 'idle' })
  const running = useRef<AbortController | null>(null)
  useEffect(() => () => running.current?.abort(), [])
  const run = useCallback(async (input: InputOf<N>) => {
    running.current?.abort()
    const abort = new AbortController()
    running.current = abort
    setState({ state: 'running', step: null })
    try {
      if (prepares) {
        const posts = await prepare(bridge, name, input, abort.signal)
        if (running.current === abort) setState({ state: 'prepared', posts })
        return undefined
      }
      const value = await bridge.call(name, input, { signal: abort.signal, progress: (step) => setState({ state: 'running', step }) })
      if (running.current === abort) setState({ state: 'done', value })
      return value
    } catch (error) {
      if (running.current === abort) setState(error instanceof CallCancelled ? { state: 'idle' } : { state: 'failed', error: callError(error) })
      return undefined
    }
  }, [bridge, name, prepares])
  const cancel = useCallback(() => {
    running.current?.abort()
    setState((before) => (before.state === 'prepared' ? { state: 'idle' } : before))
  }, [])
  return [state, run, cancel]
}

/**
 * An operation that is asked as soon as the component stands, and again whenever its input changes or `again` is
 * called: `const [tickets, again] = useQuery('list-tickets', { search })`. The last value stays while it is asked again. What
 * broke is asked again when the other side answers.
 * @param asOf it is asked again when this changes too: hand in the head of the ledger, and what others post is seen
 */
export function useQuery<N extends OperationName>(name: N, input: InputOf<N>, asOf = ''): readonly [CallState<OutputOf<N>>, () => void] {
  const bridge = useBridge()
  const [state, setState] = useState<CallState<OutputOf<N>>>({ state: 'running', step: null })
  const [asked, setAsked] = useState(0)
  const key = JSON.stringify(input)
  useEffect(() => {
    const abort = new AbortController()
    setState((before) => (before.state === 'done' ? before : { state: 'running', step: null }))
    bridge.call(name, JSON.parse(key), { signal: abort.signal, progress: (step) => setState((before) => (before.state === 'done' ? before : { state: 'running', step })) }).then(
      (value) => { if (!abort.signal.aborted) setState({ state: 'done', value }) },
      (error: unknown) => { if (!abort.signal.aborted) setState({ state: 'failed', error: callError(error) }) },
    )
    return () => abort.abort()
  }, [bridge, name, key, asked, asOf])
  const again = useCallback(() => setAsked((n) => n + 1), [])
  useAgainWhenBack(state.state === 'failed' ? state.error : null, state.state === 'done', again)
  return [state, again]
}
