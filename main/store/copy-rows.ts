import { sql, type Kysely } from 'kysely'
import { entriesBetween } from './entry-rows.ts'
import { rebuildProjections, type PROJECTIONS } from './projections.ts'
import type { Schema } from './schema.ts'

/** Every table that is not made from another, and the column by which its rows are told apart; in the order of references. */
const KEYS: Readonly<Record<Exclude<keyof Schema, (typeof PROJECTIONS)[number]>, { readonly key: string; readonly first: string | number }>> = {
  entry: { key: 'seq', first: 0 }, document: { key: 'seq', first: 0 },
  draft: { key: 'id', first: '' }, protected_key: { key: 'identity', first: '' }, passphrase: { key: 'person', first: '' }, proposal: { key: 'id', first: '' },
}
type Table = keyof typeof KEYS
const TABLES: readonly Table[] = ['entry', 'document', 'draft', 'protected_key', 'passphrase', 'proposal']

/** Rows are copied this many at a time: a tank's capacity table can make one entry large, and a document is larger still. */
const BATCH = 32

/** How many rows there are of what was copied. */
export interface CopiedRows { readonly entries: number; readonly documents: number }

/** Told how far a copy is; may throw to stop it. */
export type CopyStep = (done: number, of: number, what: string) => Promise<void>

/** Copies every row of evidence and every side table into an empty ledger as they stand, and makes the projections there from the entries. */
export async function copyRows(from: Kysely<Schema>, to: Kysely<Schema>, step: CopyStep): Promise<CopiedRows> {
  const [entries, documents] = [await countOf(from, 'entry'), await countOf(from, 'document')]
  for (const table of TABLES) await copyTable(from, to, table, (done) => step(done, table === 'entry' ? entries : table === 'document' ? documents : 0, WORDS[table]))
  let projected = 0
  await rebuildProjections(to, told(entriesBetween(to, 1, Number.MAX_SAFE_INTEGER), async () => {
    projected += 1
    if (projected % BATCH === 0) await step(projected, entries, 'registers')
  }))
  return { entries, documents }
}

const WORDS: Readonly<Record<Table, string>> = { entry: 'entries', document: 'documents', draft: 'drafts', protected_key: 'keys', passphrase: 'keys', proposal: 'drafts' }

/** The first table that holds anything; undefined when none does. */
export async function firstFilled(db: Kysely<Schema>): Promise<Table | undefined> {
  for (const table of TABLES) if (await countOf(db, table) > 0) return table
  return undefined
}

async function countOf(db: Kysely<Schema>, table: Table): Promise<number> {
  const { rows: [found] } = await sql<{ count: number }>`select count(*) as count from ${sql.table(table)}`.execute(db)
  return found?.count ?? 0
}

async function copyTable(from: Kysely<Schema>, to: Kysely<Schema>, table: Table, step: (done: number) => Promise<void>): Promise<void> {
  const { key, first } = KEYS[table]
  let done = 0
  for (let after: unknown = first; ;) {
    const { rows } = await sql<Record<string, unknown>>`select * from ${sql.table(table)} where ${sql.ref(key)} > ${after} order by ${sql.ref(key)} limit ${sql.lit(BATCH)}`.execute(from)
    const last = rows.at(-1)
    if (last === undefined) return
    const columns = Object.keys(last)
    const values = rows.map((row) => sql`(${sql.join(columns.map((column) => row[column]))})`)
    await sql`insert into ${sql.table(table)} (${sql.join(columns.map((column) => sql.ref(column)))}) values ${sql.join(values)}`.execute(to)
    done += rows.length
    await step(done)
    if (rows.length < BATCH) return
    after = last[key]
  }
}

async function* told<T>(all: AsyncIterable<T>, tell: () => Promise<void>): AsyncIterable<T> {
  for await (const one of all) {
    yield one
    await tell()
  }
}
