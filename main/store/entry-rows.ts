import { sql, type Kysely } from 'kysely'
import { canonicalJson, entrySchema, GENESIS, type Entry } from '../../core/ledger/index.ts'
import { atHand, fixedQuery } from './fixed-query.ts'
import { insertRow } from './insert-rows.ts'
import type { EntryTable, Schema } from './schema.ts'
import type { Head } from './head.ts'

/** Entries are read this many at a time: a tank's capacity table can make one entry large. */
const BATCH = 64

export function rowOf(entry: Entry): EntryTable {
  return { seq: entry.seq, kind: entry.kind, at: entry.at, by: entry.by, body: canonicalJson(entry.body), previous: entry.previous, hash: entry.hash, origin: entry.origin === undefined ? null : canonicalJson(entry.origin) }
}

/** An entry read strictly from its row; throws when the row is no entry. */
export function entryOf(row: EntryTable): Entry {
  const { origin, ...columns } = row
  const body: unknown = JSON.parse(row.body)
  return entrySchema.parse({ ...columns, body, ...(origin === null ? {} : { origin: JSON.parse(origin) as unknown }) })
}

const lastEntry = fixedQuery((db) => db.selectFrom('entry').select(['seq', 'hash']).orderBy('seq', 'desc').limit(sql.lit(1)))

export async function headOf(db: Kysely<Schema>): Promise<Head> {
  const [last] = await lastEntry(db)
  return last ?? { seq: 0, hash: GENESIS }
}

const insertBytes = fixedQuery((db, seq: number, kind: string, at: string, by: string, body: Uint8Array, previous: string, hash: string, origin: string | null) => ({
  compile: () => sql`insert into entry (seq, kind, at, "by", body, previous, hash, origin) values (${seq}, ${kind}, ${at}, ${by}, cast(${body} as text), ${previous}, ${hash}, ${origin})`.compile(db),
}))

/** Puts an entry into its table; in a file its body as the UTF-8 that was hashed, so that it is made once. */
export async function insertEntry(db: Kysely<Schema>, row: EntryTable, body: Uint8Array): Promise<void> {
  if (atHand(db) !== undefined) await insertBytes(db, row.seq, row.kind, row.at, row.by, body, row.previous, row.hash, row.origin)
  else await insertRow(db, 'entry', row)
}

export async function entryAt(db: Kysely<Schema>, seq: number): Promise<Entry | undefined> {
  const row = await db.selectFrom('entry').selectAll().where('seq', '=', seq).executeTakeFirst()
  return row === undefined ? undefined : entryOf(row)
}

/** Entries in order of sequence, both ends included. */
export async function* entriesBetween(db: Kysely<Schema>, from: number, to: number): AsyncIterable<Entry> {
  for (let next = from; ;) {
    const rows = await db.selectFrom('entry').selectAll().where('seq', '>=', next).where('seq', '<=', to).orderBy('seq').limit(BATCH).execute()
    for (const row of rows) yield entryOf(row)
    const last = rows.at(-1)
    if (last === undefined || rows.length < BATCH) return
    next = last.seq + 1
  }
}
