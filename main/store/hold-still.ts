import { sql, type Kysely } from 'kysely'
import type { Schema } from './schema.ts'

/** Reads a ledger on a server as it stands at the first question, while others go on posting. */
export async function heldStill<T>(db: Kysely<Schema>, act: (held: Kysely<Schema>) => Promise<T>): Promise<T> {
  return db.transaction().setIsolationLevel('repeatable read').setAccessMode('read only').execute(async (held) => {
    await mayPause(held)
    return act(held)
  })
}

/** Between two questions of a long check or copy there may be minutes of work here; the server is not to end it meanwhile. */
export async function mayPause(held: Kysely<Schema>): Promise<void> {
  await sql`set local idle_in_transaction_session_timeout = 0`.execute(held)
}
