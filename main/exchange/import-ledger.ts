import type { Entry, EntryOf, Posting, Recomputed } from '../../core/ledger/index.ts'
import { sealedChecks, wordsOf } from '../../core/reconciliation/index.ts'
import type { Progress } from '../operations/contracts/index.ts'
import { inWords, LedgerFault, LedgerFileFault, openStore, recomputing, tankTimeSeen, type LedgerStore, type Recomputes, type Recomputing, type StoredDocument, type TankTimeSeen } from '../store/index.ts'
import { lineRefusal } from './lines-of-file.ts'
import { readLedgerLines, type ReadEntry } from './read-ledger-lines.ts'

/** Entries put down in one transaction. */
const BATCH = 250

const ELSEWHERE = 'nothing was imported; have the ledger checked where it is kept, and take a backup or an export from before'

/** What was made of the lines. */
export interface Imported { readonly head: string; readonly entries: number; readonly tickets: number }

/**
 * Makes a ledger of exported lines. Every entry is posted again: it must fit what stands before it, come to the hash
 * that its line gives and, where something in it was computed, come out again of the entries before it.
 * @param to path of a ledger that is to be made
 * @param by what computed entries are made again by
 */
export async function importLedger(from: string, to: string, by: Recomputes, progress: (step: Progress) => void, signal: AbortSignal): Promise<Imported> {
  const store = await openStore(to)
  try {
    const again = recomputing((seq) => store.entry(seq), by.software)
    const time = tankTimeSeen(async ({ tank, opened, closed }) => (await store.everMoved(tank, opened, closed)).underWay)
    let batch: ReadEntry[] = []
    const putDown = async (): Promise<void> => {
      await put(store, batch, { again, time })
      batch = []
    }
    for await (const read of readLedgerLines(from)) {
      if (read.entry.kind === 'period-closed') {
        // its checks were made of the ledger as it stands before it
        await putDown()
        const { entry } = read
        await refuseDifferent(read, () => otherChecks(store, entry, by))
      }
      batch.push(read)
      if (batch.length < BATCH) continue
      await putDown()
      progress({ done: read.entry.seq, of: 0, what: 'entries' })
      signal.throwIfAborted()
    }
    await putDown()
    const head = await store.head()
    return { head: head.hash, entries: head.seq, tickets: await store.ticketCount() }
  } finally {
    await store.close()
  }
}

/** Puts a batch down and makes its entries again; when it does not fit, finds the line that does not. */
async function put(store: LedgerStore, batch: readonly ReadEntry[], judges: Judges): Promise<void> {
  try {
    refuseOthers(batch, await append(store, batch))
  } catch (error) {
    if (error instanceof LedgerFileFault || batch.length === 0) throw error
    for (const one of batch) {
      await append(store, [one]).catch((why: unknown) => { throw lineRefusal(one.line, why instanceof Error ? why.message : String(why)) })
      await judge(one, judges)
    }
    throw error
  }
  for (const one of batch) await judge(one, judges)
}

/** What operations judge before they post, by the entries before each. */
interface Judges { readonly again: Recomputing; readonly time: TankTimeSeen }

async function judge(one: ReadEntry, { again, time }: Judges): Promise<void> {
  await refuseDifferent(one, () => again.take(one.entry))
  const [taken] = await time.take(one.entry)
  if (taken !== undefined) throw lineRefusal(one.line, `entry ${one.entry.seq}: ${taken}`, ELSEWHERE)
}

function append(store: LedgerStore, batch: readonly ReadEntry[]): Promise<readonly Entry[]> {
  return store.append(batch.map(({ entry }) => postingOf(entry)), { documents: batch.flatMap(documentOf) })
}

function refuseOthers(batch: readonly ReadEntry[], stored: readonly Entry[]): void {
  for (const [i, { line, entry }] of batch.entries()) {
    if (stored[i]?.hash !== entry.hash) throw lineRefusal(line, `entry ${entry.seq} comes to the hash ${stored[i]?.hash ?? 'of none'}, not to ${entry.hash}`)
  }
}

/** Refuses an entry by its line when it does not come out again, or when what it says cannot be computed with at all. */
async function refuseDifferent({ line, entry: { seq } }: ReadEntry, again: () => Promise<readonly Recomputed[] | null>): Promise<void> {
  const [first] = await again().catch((error: unknown) => {
    if (error instanceof LedgerFault) throw error
    throw lineRefusal(line, `entry ${seq} cannot be made again: ${error instanceof Error ? error.message : String(error)}`, ELSEWHERE)
  }) ?? []
  if (first !== undefined) throw lineRefusal(line, `entry ${seq}: ${inWords(first)}`, ELSEWHERE)
}

/** In what the checks of a seal are not those that the ledger gives; a period that is not there is refused when it is posted. */
async function otherChecks(store: LedgerStore, { body: { seal } }: EntryOf<'period-closed'>, { closingChecks }: Recomputes): Promise<readonly Recomputed[]> {
  const period = (await store.periods()).find(({ name }) => name === seal.period.name)
  return period === undefined ? [] : sealedChecks(seal.checks, await closingChecks(store, period, wordsOf(seal.checks)))
}

function postingOf({ seq: _seq, previous: _previous, hash: _hash, ...posting }: Entry): Posting {
  return posting
}

function documentOf({ entry, document }: ReadEntry): readonly StoredDocument[] {
  if (document === undefined || entry.kind !== 'ticket-posted') return []
  return [{ ...document, name: `${entry.body.ticket.number}.pdf` }]
}
