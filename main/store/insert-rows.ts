import { sql, type Kysely } from 'kysely'
import { atHand, fixedQuery } from './fixed-query.ts'
import type { Schema } from './schema.ts'

/** Puts one row into a table. */
export async function insertRow<T extends keyof Schema>(db: Kysely<Schema>, table: T, row: Schema[T]): Promise<void> {
  await insertRows(db, table, [row])
}

/**
 * Puts rows of the same columns into a table: at once where each statement is a way to the server and back, one by one in
 * a file, which would keep a journal of its own for a statement that may fail half way.
 */
export async function insertRows<T extends keyof Schema>(db: Kysely<Schema>, table: T, rows: readonly Schema[T][]): Promise<void> {
  const [first] = rows
  if (first === undefined) return
  const statements = atHand(db)
  if (statements === undefined) return insertTogether(db, table, Object.keys(first), rows)
  const insert = statements.prepare(insertOf(table, first))
  for (const row of rows) insert.run(Object.values(row))
}

/** The insert of one row into each table, as it was last put into SQL: making the text anew takes longer than the insert. */
const LAST = new Map<string, { readonly columns: readonly string[]; readonly text: string }>()

function insertOf(table: string, row: object): string {
  const last = LAST.get(table)
  if (last !== undefined && areNamesOf(row, last.columns)) return last.text
  const columns = Object.keys(row)
  const text = `insert into "${table}" (${columns.map((name) => `"${name}"`).join()}) values (${columns.map(() => '?').join()})`
  LAST.set(table, { columns, text })
  return text
}

function areNamesOf(row: object, columns: readonly string[]): boolean {
  let i = 0
  for (const name in row) if (name !== columns[i++]) return false
  return i === columns.length
}

const together = new Map<string, (db: Kysely<Schema>, ...values: readonly unknown[]) => Promise<unknown[]>>()

/** One insert of several rows, which is put into SQL once for each number of them. */
async function insertTogether<T extends keyof Schema>(db: Kysely<Schema>, table: T, columns: readonly string[], rows: readonly Schema[T][]): Promise<void> {
  const key = `${table} ${columns.join()} ${rows.length}`
  const insert = together.get(key) ?? fixedQuery((at, ...values: readonly unknown[]) => {
    const each = rows.map((_, i) => sql`(${sql.join(values.slice(i * columns.length, (i + 1) * columns.length))})`)
    return { compile: () => sql`insert into ${sql.table(table)} (${sql.join(columns.map((column) => sql.ref(column)))}) values ${sql.join(each)}`.compile(at) }
  })
  together.set(key, insert)
  await insert(db, ...rows.flatMap((row): readonly unknown[] => Object.values(row)))
}
