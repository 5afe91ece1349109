import { sql, type Kysely } from 'kysely'
import { attempt, bytesIn, textOf, type Checking } from './checking.ts'
import { LEGS, PROJECTIONS } from './projections.ts'
import type { Schema } from './schema.ts'

type Projection = (typeof PROJECTIONS)[number]

/** The column that names a row. */
const KEYS = { ticket: 'seq', movement: 'id', measurement: 'seq', allocation: 'id', period: 'seq', alarm: 'seq', trail: 'seq', trail_about: 'id', ticket_word: 'id' } as const

const COLUMNS: { readonly [T in Projection]: Columns<Schema[T], (typeof KEYS)[T]> } = {
  ticket: {
    n: true, number: true, kind: true, tank: true, product: true, product_name: true, from_party: true, to_party: true, opened_at: true, closed_at: true,
    issued_at: true, closed_order: true, gsv: true, gsv_unit: true, nsv: true, nsv_unit: true, weight: true, weight_unit: true,
    voided_seq: true, voided_at: true, void_reason: true, replaces: true, replaced_by: true, words: true,
  },
  movement: {
    seq: true, kind: true, number: true, place: true, tank: true, product: true, opened_at: true, closed_at: true, opened_order: true, closed_order: true,
    lasted: true, booked_at: true, booked_order: true, opening_nsv: true, closing_nsv: true, change: true, unit: true, voided_seq: true,
    concerns: true, corrects: true, corrected_by: true,
  },
  measurement: { tank: true, product: true, at: true, at_order: true, nsv: true, unit: true },
  allocation: { seq: true, of_seq: true, tank: true, product: true, party: true, at: true, at_order: true, nsv: true, unit: true },
  period: { name: true, from_at: true, to_at: true, from_order: true, to_order: true, closed_seq: true },
  alarm: { tank: true, gauge: true, kind: true, raised_seq: true, raised_order: true, cleared_seq: true, cleared_order: true },
  trail: { kind: true, at_order: true, by: true, person: true, station: true, subject: true },
  trail_about: { seq: true, subject: true },
  ticket_word: { seq: true, word: true },
}

/** Every column but the one that names the row; a column that is left out does not compile. */
type Columns<T, K> = Readonly<Record<Exclude<keyof T, K>, true>>
interface Row { readonly key: number; readonly values: Readonly<Record<string, Uint8Array | null>> }

const BATCH = 200

/** The projections in the file are, byte for byte, those that were made again from the entries. */
export async function checkProjections(check: Checking): Promise<void> {
  for (const table of PROJECTIONS) {
    await attempt(check, table, async () => {
      for (let after = 0; ;) {
        const stands = await rowsAfter(check.file, table, after)
        const expected = await rowsAfter(check.again, table, after)
        const upTo = Math.min(lastOf(stands), lastOf(expected))
        compare(check, table, byNumber(stands, upTo), byNumber(expected, upTo))
        await check.step({ done: after, of: 0, what: table })
        if (upTo === Infinity) return
        after = upTo
      }
    })
  }
}

async function rowsAfter(db: Kysely<Schema>, table: Projection, after: number): Promise<readonly Row[]> {
  const key = sql.ref<number>(KEYS[table])
  const rows = await db.selectFrom(table).select(key.as('key_of_row')).select(Object.keys(COLUMNS[table]).map(bytesIn(db))).where(key, '>', after).orderBy(key).limit(BATCH).execute()
  return rows.map(({ key_of_row: number, ...values }) => ({ key: number, values }))
}

/** The number up to which a batch tells all there is. */
function lastOf(rows: readonly Row[]): number {
  return rows.length < BATCH ? Infinity : rows.at(-1)?.key ?? Infinity
}

function byNumber(rows: readonly Row[], upTo: number): ReadonlyMap<number, Row> {
  return new Map(rows.filter((row) => row.key <= upTo).map((row) => [row.key, row]))
}

function compare({ differs }: Checking, table: Projection, stands: ReadonlyMap<number, Row>, expected: ReadonlyMap<number, Row>): void {
  for (const [key, row] of expected) {
    const found = stands.get(key)
    if (found === undefined) differs(`${table} ${key}`, 'it is missing; the entries give it', entryOfRow(table, key))
    else for (const [column, value] of Object.entries(row.values)) {
      if (!same(found.values[column], value)) differs(`${table} ${key}, column ${column}`, `it is ${inWords(found.values[column])}; the entries give ${inWords(value)}`, entryOfRow(table, key))
    }
  }
  for (const key of stands.keys()) if (!expected.has(key)) differs(`${table} ${key}`, 'no entry gives it', entryOfRow(table, key))
}

/** The number of the entry that a row is made from. */
function entryOfRow(table: Projection, key: number): number {
  return KEYS[table] === 'id' ? Math.floor(key / LEGS) : key
}

type Value = Uint8Array | null | undefined

function same(one: Value, other: Value): boolean {
  return one instanceof Uint8Array && other instanceof Uint8Array ? Buffer.compare(one, other) === 0 : one === other
}

function inWords(value: Value): string {
  if (!(value instanceof Uint8Array)) return value === null || value === undefined ? 'absent' : String(value)
  return textOf(value) ?? 'no text'
}
