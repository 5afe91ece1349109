import type { Entry, Posting } from '../../core/ledger/index.ts'
import type { Progress } from '../operations/contracts/index.ts'
import { LedgerFileFault, openStore, type LedgerStore, type StoredDocument } from '../store/index.ts'
import { lineRefusal } from './lines-of-file.ts'
import { readLedgerLines, type ReadEntry } from './read-ledger-lines.ts'

/** Entries put down in one transaction. */
const BATCH = 250

/** What was made of the lines. */
export interface Imported { readonly head: string; readonly entries: number; readonly tickets: number }

/**
 * Makes a ledger of exported lines. Every entry is posted again: it must fit what stands before it and come to the hash
 * that its line gives.
 * @param to path of a ledger that is to be made
 */
export async function importLedger(from: string, to: string, progress: (step: Progress) => void, signal: AbortSignal): Promise<Imported> {
  let store: LedgerStore | undefined
  try {
    let batch: ReadEntry[] = []
    for await (const read of readLedgerLines(from)) {
      batch.push(read)
      if (batch.length < BATCH) continue
      store ??= await openStore(to)
      await put(store, batch)
      progress({ done: read.entry.seq, of: 0, what: 'entries' })
      batch = []
      signal.throwIfAborted()
    }
    store ??= await openStore(to)
    await put(store, batch)
    const head = await store.head()
    return { head: head.hash, entries: head.seq, tickets: await store.ticketCount() }
  } finally {
    await store?.close()
  }
}

/** Puts a batch down; when it does not fit, finds the line that does not. */
async function put(store: LedgerStore, batch: readonly ReadEntry[]): Promise<void> {
  try {
    refuseOthers(batch, await append(store, batch))
  } catch (error) {
    if (error instanceof LedgerFileFault || batch.length === 0) throw error
    for (const one of batch) {
      await append(store, [one]).catch((why: unknown) => { throw lineRefusal(one.line, why instanceof Error ? why.message : String(why)) })
    }
    throw error
  }
}

function append(store: LedgerStore, batch: readonly ReadEntry[]): Promise<readonly Entry[]> {
  return store.append(batch.map(({ entry }) => postingOf(entry)), { documents: batch.flatMap(documentOf) })
}

function refuseOthers(batch: readonly ReadEntry[], stored: readonly Entry[]): void {
  for (const [i, { line, entry }] of batch.entries()) {
    if (stored[i]?.hash !== entry.hash) throw lineRefusal(line, `entry ${entry.seq} comes to the hash ${stored[i]?.hash ?? 'of none'}, not to ${entry.hash}`)
  }
}

function postingOf({ seq: _seq, previous: _previous, hash: _hash, ...posting }: Entry): Posting {
  return posting
}

function documentOf({ entry, document }: ReadEntry): readonly StoredDocument[] {
  if (document === undefined || entry.kind !== 'ticket-posted') return []
  return [{ ...document, name: `${entry.body.ticket.number}.pdf` }]
}
