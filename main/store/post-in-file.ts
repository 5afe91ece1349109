import { sql, type Kysely } from 'kysely'
import type { FileConnection } from './connection.ts'
import { LedgerFileFault } from './file-fault.ts'
import { fixedQuery, runAtHand } from './fixed-query.ts'
import { MIGRATION_NAMES } from './migrations/index.ts'
import { postBatch, type Writing } from './post.ts'
import type { Schema } from './schema.ts'

const stepsTaken = fixedQuery<readonly [], { steps: number }>((db) => ({ compile: () => sql<{ steps: number }>`select count(*) as steps from kysely_migration`.compile(db) }))

/**
 * Posts in a file, in one transaction that takes the write lock first; all of it or nothing. Others of this program wait
 * for the connection, other programs for the lock.
 */
export function writeInFile<T>({ db, path, statements }: FileConnection, act: Writing<T>): Promise<T> {
  return db.connection().execute(async (held) => {
    let open = true
    runAtHand(held, statements)
    statements.prepare('begin').run([])
    try {
      await refuseNewer(held, path)
      const result = await act(held, (batch) => (open ? postBatch(held, batch) : Promise.reject(new Error('The transaction in which this was to be posted is over.'))))
      open = false
      statements.prepare('commit').run([])
      return result
    } catch (error) {
      open = false
      statements.prepare('rollback').run([])
      throw error
    }
  })
}

/** A program that is older than the ledger would leave out of the projections what it does not know. */
async function refuseNewer(held: Kysely<Schema>, path: string): Promise<void> {
  const [taken] = await stepsTaken(held)
  if (taken === undefined || taken.steps <= MIGRATION_NAMES.length) return
  throw new LedgerFileFault(path, `The ledger ${path} was brought to a newer version of this program while it was open here. Update this program and open the ledger again; nothing was posted.`)
}
