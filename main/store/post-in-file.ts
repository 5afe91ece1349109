import { sql, type Kysely } from 'kysely'
import { GENESIS } from '../../core/ledger/index.ts'
import type { FileConnection } from './connection.ts'
import { LedgerFileFault } from './file-fault.ts'
import { fixedQuery } from './fixed-query.ts'
import { MIGRATION_NAMES } from './migrations/index.ts'
import { postBatch, type Writing } from './post.ts'
import type { Schema } from './schema.ts'
import type { Head } from './store.ts'

/**
 * Posts in a file, in one transaction that takes the write lock first; all of it or nothing. Others of this program wait
 * for the connection, other programs for the lock.
 */
export async function writeInFile<T>(file: FileConnection, act: Writing<T>): Promise<T> {
  await file.turn.take()
  try {
    return await inTransaction(file, act)
  } finally {
    file.turn.give()
  }
}

async function inTransaction<T>({ held, path, statements }: FileConnection, act: Writing<T>): Promise<T> {
  let open = true
  statements.prepare('begin').run([])
  try {
    let head = await headHere(held, path)
    const result = await act(held, async (batch) => {
      if (!open) throw new Error('The transaction in which this was to be posted is over.')
      const entries = await postBatch(held, head, batch)
      head = entries.at(-1) ?? head
      return entries
    })
    open = false
    statements.prepare('commit').run([])
    return result
  } catch (error) {
    open = false
    statements.prepare('rollback').run([])
    throw error
  }
}

/** One question for both, since each takes as long as a row of the posting itself. */
const lastAndSteps = fixedQuery((db) => db.selectFrom('entry').select(['seq', 'hash', sql<number>`(select count(*) from kysely_migration)`.as('steps')]).orderBy('seq', 'desc').limit(sql.lit(1)))

/** The head. A program that is older than the ledger would leave out of the projections what it does not know. */
async function headHere(held: Kysely<Schema>, path: string): Promise<Head> {
  const [last] = await lastAndSteps(held)
  if (last === undefined) return { seq: 0, hash: GENESIS }
  if (last.steps > MIGRATION_NAMES.length) {
    throw new LedgerFileFault(path, `The ledger ${path} was brought to a newer version of this program while it was open here. Update this program and open the ledger again; nothing was posted.`)
  }
  return last
}
