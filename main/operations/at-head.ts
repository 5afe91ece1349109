import { HeadMoved, type Head, type LedgerStore } from '../store/index.ts'

/** As often as two dozen desks posting at once could come first. */
const MOST_TRIES = 25
/** So often what takes long comes too late before the others are kept waiting for it. */
const TRIES_BESIDE_OTHERS = 4

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

/**
 * The same for what takes long, as signing does: when others came first a few times, they wait until it is done.
 * @param act uses the store that it is given and no other
 */
export async function atHeadOrAlone<T>(store: LedgerStore, signal: AbortSignal, act: (head: Head, store: LedgerStore) => Promise<T>): Promise<T> {
  for (let tries = 1; tries <= TRIES_BESIDE_OTHERS; tries += 1) {
    signal.throwIfAborted()
    try {
      return await act(await store.head(), store)
    } catch (error) {
      if (!(error instanceof HeadMoved)) throw error
    }
  }
  return store.alone(async (held) => act(await held.head(), held))
}
