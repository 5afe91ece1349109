import type { Kysely } from 'kysely'
import { attempt, bytesOf, textOf, type Checking } from './checking.ts'
import { PROJECTIONS } from './projections.ts'
import type { MeasurementTable, MovementTable, Schema, TicketTable } from './schema.ts'

const COLUMNS: { readonly ticket: Columns<TicketTable>; readonly movement: Columns<MovementTable>; readonly measurement: Columns<MeasurementTable> } = {
  ticket: {
    n: true, number: true, kind: true, tank: true, product: true, product_name: true, from_party: true, to_party: true, opened_at: true, closed_at: true,
    issued_at: true, closed_order: true, gsv: true, gsv_unit: true, nsv: true, nsv_unit: true, weight: true, weight_unit: true,
    voided_seq: true, voided_at: true, void_reason: true, replaces: true, replaced_by: true, words: true,
  },
  movement: {
    kind: true, number: true, tank: true, product: true, opened_at: true, closed_at: true, opened_order: true, closed_order: true,
    opening_nsv: true, closing_nsv: true, change: true, unit: true, voided_seq: true,
  },
  measurement: { tank: true, product: true, at: true, at_order: true, nsv: true, unit: true },
}
/** Every column but the one that names the row; a column that is left out does not compile. */
type Columns<T> = Readonly<Record<Exclude<keyof T, 'seq'>, true>>
type Row = Readonly<Record<string, Uint8Array | null>> & { readonly seq: number }

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

async function rowsAfter(db: Kysely<Schema>, table: (typeof PROJECTIONS)[number], after: number): Promise<readonly Row[]> {
  const columns = Object.keys(COLUMNS[table])
  const rows = await db.selectFrom(table).select('seq').select(columns.map(bytesOf)).where('seq', '>', after).orderBy('seq').limit(BATCH).execute()
  return rows
}

/** The number up to which a batch tells all there is. */
function lastOf(rows: readonly Row[]): number {
  return rows.length < BATCH ? Infinity : rows.at(-1)?.seq ?? Infinity
}

function byNumber(rows: readonly Row[], upTo: number): ReadonlyMap<number, Row> {
  return new Map(rows.filter((row) => row.seq <= upTo).map((row) => [row.seq, row]))
}

function compare({ differs }: Checking, table: string, stands: ReadonlyMap<number, Row>, expected: ReadonlyMap<number, Row>): void {
  for (const [seq, row] of expected) {
    const found = stands.get(seq)
    if (found === undefined) differs(`${table} ${seq}`, 'it is missing; the entries give it')
    else for (const [column, value] of Object.entries(row)) if (column !== 'seq') {
      if (column !== 'seq' && !same(found[column], value)) differs(`${table} ${seq}, column ${column}`, `it is ${inWords(found[column])}; the entries give ${inWords(value)}`)
    }
  }
  for (const seq of stands.keys()) if (!expected.has(seq)) differs(`${table} ${seq}`, 'no entry gives it')
}

type Value = Uint8Array | number | null | undefined

function same(one: Value, other: Value): boolean {
  return one instanceof Uint8Array && other instanceof Uint8Array ? Buffer.compare(one, other) === 0 : one === other
}

function inWords(value: Value): string {
  if (!(value instanceof Uint8Array)) return value === null || value === undefined ? 'absent' : String(value)
  return textOf(value) ?? 'no text'
}
