import { setTimeout } from 'node:timers/promises'
import { sql, type Kysely } from 'kysely'
import type { Entry } from '../../core/ledger/index.ts'
import type { ServerConnection } from './connection.ts'
import { MIGRATION_NAMES } from './migrations/index.ts'
import { postBatch, type Batch } from './post.ts'
import type { Schema } from './schema.ts'
import { codeOf, isAway, LedgerServerFault } from './server-fault.ts'

/** `DIPL`: whoever posts on a server holds this lock of the database. */
const POSTING_LOCK = 0x4449504c
/** Transactions that others made impossible: serialization failure, deadlock. */
const TRY_AGAIN: readonly string[] = ['40001', '40P01']
const MOST_TRIES = 10
/** How long to look for what became of an entry when the connection broke while it was booked. */
const SETTLE_MS = 20_000
const PAUSE_MS = 500

/** Postings of one desk wait for each other here, so that they take one connection and not all of them. */
const turns = new WeakMap<ServerConnection, Promise<unknown>>()

/** Places a batch at the end of the chain on a server, one desk after the other; all of it or nothing. */
export function postOnServer(server: ServerConnection, batch: Batch): Promise<readonly Entry[]> {
  const posted = (turns.get(server) ?? Promise.resolve()).then(() => postInTurn(server, batch))
  turns.set(server, posted.catch(() => undefined))
  return posted
}

async function postInTurn(server: ServerConnection, batch: Batch): Promise<readonly Entry[]> {
  for (let tries = 1; ; tries += 1) {
    let placed: readonly Entry[] = []
    try {
      return await alone(server.db, (desk) => desk.transaction().setIsolationLevel('serializable').execute(async (held) => {
        await refuseNewerSchema(held, server.path)
        placed = await postBatch(held, batch)
        return placed
      }))
    } catch (error) {
      if (isAway(error)) return settle(server, placed, error)
      if (!TRY_AGAIN.includes(codeOf(error)) || tries === MOST_TRIES) throw error
    }
  }
}

/**
 * Does something while no other desk posts. The lock is taken before the transaction begins, so that the transaction
 * sees all that was posted before; it ends with its connection, whatever became of that.
 */
export async function alone<T>(db: Kysely<Schema>, act: (desk: Kysely<Schema>) => Promise<T>): Promise<T> {
  return db.connection().execute(async (desk) => {
    await sql`select pg_advisory_lock(${sql.lit(POSTING_LOCK)})`.execute(desk)
    try {
      return await act(desk)
    } finally {
      // a lost connection has given the lock back already
      await sql`select pg_advisory_unlock(${sql.lit(POSTING_LOCK)})`.execute(desk).catch(() => undefined)
    }
  })
}

/** A desk with an older program would leave out of the projections what it does not know. */
async function refuseNewerSchema(db: Kysely<Schema>, path: string): Promise<void> {
  const { rows: [{ steps } = { steps: 0 }] } = await sql<{ steps: number }>`select count(*) as steps from kysely_migration`.execute(db)
  if (steps > MIGRATION_NAMES.length) throw new LedgerServerFault(path, 'other', `The ledger ${path} was brought to a newer version of this program at another desk. Update this one before you post; nothing was posted.`)
}

/**
 * The connection broke. What had not come to its commit is not booked. Else the answer to the commit was lost, and the
 * ledger itself is asked, once nobody can be booking it any more: the old connection holds the lock as long as it lives.
 */
async function settle(server: ServerConnection, placed: readonly Entry[], cause: unknown): Promise<readonly Entry[]> {
  const last = placed.at(-1)
  if (last === undefined) throw new LedgerServerFault(server.path, 'away', `${cause instanceof Error ? cause.message : String(cause)} Nothing was posted.`, cause)
  for (const until = Date.now() + SETTLE_MS; Date.now() < until; await setTimeout(PAUSE_MS)) {
    const hash = await alone(server.db, (desk) => desk.selectFrom('entry').select('hash').where('seq', '=', last.seq).executeTakeFirst())
      .then((row) => row?.hash ?? 'none', () => undefined)
    if (hash === last.hash) return placed
    if (hash !== undefined) throw new LedgerServerFault(server.path, 'other', `The connection to the ledger ${server.path} broke while ${inWords(placed)} was being booked. It was not booked; post it again.`, cause)
  }
  throw new LedgerServerFault(server.path, 'away', `The connection to the ledger ${server.path} broke while ${inWords(placed)} was being booked, and its server has not answered since. `
    + `It may or may not be booked. When the server is back, look for ${inWords(placed)} in ${placed.some(isTicket) ? 'the register' : 'the ledger'} before you post again.`, cause)
}

function isTicket(entry: Entry): boolean {
  return entry.kind === 'ticket-posted'
}

function inWords(placed: readonly Entry[]): string {
  return placed.map((entry) => (entry.kind === 'ticket-posted' ? entry.body.ticket.number : `entry ${entry.seq}`)).slice(0, 5).join(', ')
}
