import { setTimeout } from 'node:timers/promises'
import { sql, type Kysely } from 'kysely'
import type { Entry } from '../../core/ledger/index.ts'
import type { ServerConnection } from './connection.ts'
import { headOf } from './entry-rows.ts'
import { MIGRATION_NAMES } from './migrations/index.ts'
import { postBatch, type Writing } from './post.ts'
import type { Schema } from './schema.ts'
import { codeOf, isAway, LedgerServerFault } from './server-fault.ts'

/** `DIPL`: whoever posts on a server holds this lock of the database. */
const POSTING_LOCK = 0x4449504c
/** Transactions that others made impossible: serialization failure, deadlock. */
const TRY_AGAIN: readonly string[] = ['40001', '40P01']
const MOST_TRIES = 10
const PAUSE_MS = 500

/** Postings of one desk wait for each other here, so that they take one connection and not all of them. */
const turns = new WeakMap<ServerConnection, Promise<unknown>>()

/** Posts on a server, one desk after the other; all of it or nothing. */
export function writeOnServer<T>(server: ServerConnection, act: Writing<T>): Promise<T> {
  const written = (turns.get(server) ?? Promise.resolve()).then(() => writeInTurn(server, act))
  turns.set(server, written.catch(() => undefined))
  return written
}

async function writeInTurn<T>(server: ServerConnection, act: Writing<T>): Promise<T> {
  for (let tries = 1; ; tries += 1) {
    let tried: Tried<T> | undefined
    try {
      return await alone(server.db, (desk) => desk.transaction().setIsolationLevel('serializable').execute(async (held) => {
        const writer = await beginWriting(held, server.path)
        const placed: Entry[] = []
        const result = await act(held, async (batch) => {
          const entries = await postBatch(held, await headOf(held), batch)
          placed.push(...entries)
          return entries
        })
        tried = { placed, writer, result }
        return result
      }))
    } catch (error) {
      if (isAway(error)) return settle(server, tried, error)
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

/** What came to its commit: the entries, the number that the server gave the transaction, and what comes of it. */
interface Tried<T> { readonly placed: readonly Entry[]; readonly writer: string; readonly result: T }

/** Gives the server's number of the transaction. A desk with an older program would leave out of the projections what it does not know. */
async function beginWriting(db: Kysely<Schema>, path: string): Promise<string> {
  const { rows: [{ steps, writer } = { steps: 0, writer: '' }] } = await sql<{ steps: number; writer: string }>`select count(*) as steps, pg_current_xact_id()::xid::text as writer from kysely_migration`.execute(db)
  if (steps > MIGRATION_NAMES.length) throw new LedgerServerFault(path, 'other', `The ledger ${path} was brought to a newer version of this program at another desk. Update this one before you post; nothing was posted.`)
  return writer
}

/**
 * The connection broke. What had not come to its commit is not booked. Else the answer to the commit was lost, and the
 * ledger itself is asked, once nobody can be booking it any more: the old connection holds the lock as long as it lives.
 */
async function settle<T>(server: ServerConnection, tried: Tried<T> | undefined, cause: unknown): Promise<T> {
  const last = tried?.placed.at(-1)
  if (tried === undefined || last === undefined) throw new LedgerServerFault(server.path, 'away', `${cause instanceof Error ? cause.message : String(cause)} Nothing was posted.`, cause)
  const { placed } = tried
  for (const until = Date.now() + server.waitMs; Date.now() < until; await setTimeout(PAUSE_MS)) {
    const booked = await alone(server.db, (desk) => isThere(desk, last, tried.writer)).catch(() => undefined)
    if (booked === true) return tried.result
    if (booked === false) throw new LedgerServerFault(server.path, 'other', `The connection to the ledger ${server.path} broke while ${inWords(placed)} was being booked. It was not booked; post it again.`, cause)
  }
  throw new LedgerServerFault(server.path, 'away', `The connection to the ledger ${server.path} broke while ${inWords(placed)} was being booked, and its server has not answered since. `
    + `It may or may not be booked. When the server is back, look for ${inWords(placed)} in ${placed.some(isTicket) ? 'the register' : 'the ledger'} before you post again.`, cause)
}

/** Whether an entry is there and was put there by this transaction: another desk may have posted the very same since. */
async function isThere(db: Kysely<Schema>, { seq, hash }: Entry, writer: string): Promise<boolean> {
  const row = await db.selectFrom('entry').select('hash').where('seq', '=', seq).where(sql<string>`xmin::text`, '=', writer).executeTakeFirst()
  return row?.hash === hash
}

function isTicket(entry: Entry): boolean {
  return entry.kind === 'ticket-posted'
}

function inWords(placed: readonly Entry[]): string {
  return placed.map((entry) => (entry.kind === 'ticket-posted' ? entry.body.ticket.number : `entry ${entry.seq}`)).slice(0, 5).join(', ')
}
