import type { Kysely } from 'kysely'
import { Migrator } from 'kysely/migration'
import { LedgerFault } from './fault.ts'
import { migrations } from './migrations/index.ts'
import type { Schema } from './schema.ts'

/** Brings a ledger to the schema of this program. An error that is no fault of the place is handed to `fault` in words. */
export async function migrate(db: Kysely<Schema>, path: string, fault: (message: string, cause: unknown) => LedgerFault): Promise<void> {
  const { error } = await new Migrator({ db, provider: migrations }).migrateToLatest()
  if (error === undefined) return
  if (error instanceof LedgerFault) throw error
  const message = error instanceof Error ? error.message : String(error)
  throw fault(message.includes('is missing')
    ? `The ledger ${path} was made by a newer version of this program (${message}). Update the program.`
    : `The ledger ${path} could not be brought to this version of the program: ${message}. Nothing was changed; keep the file and open the last backup.`, error)
}
