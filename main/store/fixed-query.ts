import { sql, type Compilable, type CompiledQuery, type Kysely, type SqliteDatabase } from 'kysely'
import type { Schema } from './schema.ts'

/** Transactions whose statements are run where they stand: those of a posting, one after the other on the one connection of a file. */
const AT_HAND = new WeakMap<Kysely<Schema>, SqliteDatabase>()

/**
 * Lets the fixed queries of a transaction go to the file's statements without the steps between, which take as long as
 * the statements of a posting themselves. To be called with the transaction that holds the file.
 */
export function runAtHand(held: Kysely<Schema>, statements: SqliteDatabase): void {
  AT_HAND.set(held, statements)
}

/** Whether the statements of a transaction are run where they stand, in a file. */
export function isAtHand(db: Kysely<Schema>): boolean {
  return AT_HAND.has(db)
}

/**
 * A query that is put into SQL once for each database, for those that every posting asks: making their SQL anew takes
 * longer than answering them. Its arguments are its only parameters, in their order.
 */
export function fixedQuery<A extends readonly unknown[], R>(make: (db: Kysely<Schema>, ...args: A) => Compilable<R>): (db: Kysely<Schema>, ...args: A) => Promise<R[]> {
  const compiled = new WeakMap<object, CompiledQuery<R>>()
  return async (db, ...args) => {
    const { adapter } = db.getExecutor()
    const query = compiled.get(adapter) ?? make(db, ...args).compile()
    if (query.parameters.length !== args.length) throw new Error(`${query.sql} has other parameters than its ${args.length} arguments`)
    compiled.set(adapter, query)
    const statement = AT_HAND.get(db)?.prepare(query.sql)
    if (statement === undefined) return (await db.executeQuery<R>({ ...query, parameters: args })).rows
    if (statement.reader) return statement.all(args) as R[]
    statement.run(args)
    return []
  }
}

const inserts = new Map<string, (db: Kysely<Schema>, ...values: readonly unknown[]) => Promise<unknown[]>>()

/** Puts rows of the same columns into a table, by an insert that is put into SQL once for each number of rows. */
async function insertTogether<T extends keyof Schema>(db: Kysely<Schema>, table: T, rows: readonly Schema[T][]): Promise<void> {
  const [first] = rows
  if (first === undefined) return
  const columns = Object.keys(first)
  const key = `${table} ${columns.join()} ${rows.length}`
  const insert = inserts.get(key) ?? fixedQuery((at, ...values: readonly unknown[]) => {
    const each = rows.map((_, i) => sql`(${sql.join(values.slice(i * columns.length, (i + 1) * columns.length))})`)
    return { compile: () => sql`insert into ${sql.table(table)} (${sql.join(columns.map((column) => sql.ref(column)))}) values ${sql.join(each)}`.compile(at) }
  })
  inserts.set(key, insert)
  await insert(db, ...rows.flatMap((row): readonly unknown[] => Object.values(row)))
}

/** Puts one row into a table. */
export async function insertRow<T extends keyof Schema>(db: Kysely<Schema>, table: T, row: Schema[T]): Promise<void> {
  await insertTogether(db, table, [row])
}

/**
 * Puts rows of the same columns into a table: at once where each statement is a way to the server and back, one by one in
 * a file, which would keep a journal of its own for a statement that may fail half way.
 */
export async function insertRows<T extends keyof Schema>(db: Kysely<Schema>, table: T, rows: readonly Schema[T][]): Promise<void> {
  const statements = AT_HAND.get(db)
  if (statements === undefined) return insertTogether(db, table, rows)
  const columns = Object.keys(rows[0] ?? {})
  const insert = statements.prepare(`insert into "${table}" (${columns.map((name) => `"${name}"`).join()}) values (${columns.map(() => '?').join()})`)
  for (const row of rows) insert.run(Object.values(row))
}
