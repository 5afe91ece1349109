import { sql, type CompiledQuery, type Kysely } from 'kysely'
import type { Schema } from './schema.ts'

/** Inserts as they were first put into SQL, by what speaks to the database. */
const COMPILED = new WeakMap<object, Map<string, CompiledQuery>>()

/**
 * Puts one row into a table. Every posting does so several times, and putting the same insert into SQL anew each time
 * would take longer than doing it.
 */
export async function insertRow<T extends keyof Schema>(db: Kysely<Schema>, table: T, row: Schema[T]): Promise<void> {
  const columns = Object.keys(row)
  const { adapter } = db.getExecutor()
  const known = COMPILED.get(adapter) ?? new Map<string, CompiledQuery>()
  COMPILED.set(adapter, known)
  const key = `${table} ${columns.join()}`
  const compiled = known.get(key) ?? sql`insert into ${sql.table(table)} (${sql.join(columns.map((column) => sql.ref(column)))}) values (${sql.join(Object.values(row))})`.compile(db)
  known.set(key, compiled)
  await db.executeQuery({ ...compiled, parameters: Object.values(row) })
}
