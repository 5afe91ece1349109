import { HeadMoved, type Head, type LedgerStore } from '../store/index.ts'

/** As often as two dozen desks posting at once could come first. */
const MOST_TRIES = 25

/**
 * Does something that holds only as long as nobody else posts: it is given the head, hands it to `append` as the
 * expected one, and is done again from the start when another posting came first.
 */
export async function atHead<T>(store: Pick<LedgerStore, 'head'>, signal: AbortSignal, act: (head: Head) => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries += 1) {
    signal.throwIfAborted()
    try {
      return await act(await store.head())
    } catch (error) {
      if (!(error instanceof HeadMoved) || tries === MOST_TRIES) throw error
    }
  }
}
