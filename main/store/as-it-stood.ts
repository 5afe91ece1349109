import type { Kysely } from 'kysely'
import { isOfKind, type EntryKind, type EntryOf } from '../../core/ledger/index.ts'
import { bookAt } from './book.ts'
import { entryOf } from './entry-rows.ts'
import { everMoved, measurementsBetween } from './inventory.ts'
import { periodsOf } from './periods.ts'
import { registerLines } from './register.ts'
import type { Schema } from './schema.ts'
import type { SealAt } from './sealed.ts'
import { unsharedMovements } from './stock.ts'
import type { AsItStood, Head } from './store.ts'

/**
 * A ledger as it stood at one of its entries. What waits beside a ledger leaves nothing behind, so nothing waits here.
 * @param held where the entries are, those that came later too
 * @param again the projections of the entries up to the head
 * @param seal the last one before the head; undefined where no period was closed yet
 */
export function asItStood(held: Kysely<Schema>, again: Kysely<Schema>, head: Head, seal: SealAt | undefined): AsItStood {
  return {
    head: () => Promise.resolve(head),
    entriesOfKind: (kind) => ofKind(held, kind, head.seq),
    periods: () => periodsOf(again),
    register: (filter) => registerLines(again, filter),
    book: (at) => bookAt(again, at, seal),
    unshared: (at, limit, tank) => unsharedMovements(again, at, limit, tank),
    measurements: (from, to, tank) => measurementsBetween(again, from, to, tank),
    everMoved: (tank, from, to) => everMoved(again, tank, from, to),
    drafts: () => Promise.resolve([]), proposals: () => Promise.resolve([]),
  }
}

async function ofKind<K extends EntryKind>(held: Kysely<Schema>, kind: K, upTo: number): Promise<readonly EntryOf<K>[]> {
  const rows = await held.selectFrom('entry').selectAll().where('kind', '=', kind).where('seq', '<=', upTo).orderBy('seq').execute()
  return rows.map(entryOf).flatMap((entry) => (isOfKind(entry, kind) ? [entry] : []))
}
