import type { Compilable, CompiledQuery, Kysely, SqliteDatabase } from 'kysely'
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

/** The statements of the file that a transaction holds; undefined in one on a server, and outside of a posting. */
export function atHand(db: Kysely<Schema>): SqliteDatabase | undefined {
  return AT_HAND.get(db)
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
