import type { Posting } from '../../core/ledger/index.ts'
import type { LedgerStore } from '../store/index.ts'

/** Where an entry went. */
export interface Posted { readonly seq: number; readonly hash: string }

/** One entry at the end of the ledger; with an expected head, only there. */
export async function post(store: LedgerStore, posting: Posting, options: Parameters<LedgerStore['append']>[1] = {}): Promise<Posted> {
  const [entry] = await store.append([posting], options)
  if (!entry) throw new Error('The ledger took an entry and gave none back.')
  return { seq: entry.seq, hash: entry.hash }
}
