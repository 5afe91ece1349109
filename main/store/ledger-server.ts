import { sql } from 'kysely'
import { Migrator } from 'kysely/migration'
import type { ServerConnection } from './connection.ts'
import { headOf } from './entry-rows.ts'
import { migrate } from './migrate.ts'
import { migrations } from './migrations/index.ts'
import { openPool } from './postgres.ts'
import { LedgerServerFault } from './server-fault.ts'
import { serverPlace } from './server-place.ts'

/** The oldest server whose behaviour is relied on. */
const OLDEST = 150_000

/** Opens the ledger on a server; makes its tables first where there are none. One of an older version is left as it is. */
export async function openLedgerServer(address: string, waitMs: number): Promise<ServerConnection> {
  const opened = await reachServer(address, waitMs)
  try {
    await refuseOlder(opened)
    await migrate(opened.db, opened.path, (message, cause) => new LedgerServerFault(opened.path, 'other', message, cause))
  } catch (error) {
    await opened.db.destroy()
    throw error
  }
  return opened
}

/**
 * Connects to a server and sees to it that a ledger can be kept there; makes nothing.
 * @throws LedgerServerFault that says what is wrong with the server or the way to it
 */
export async function reachServer(address: string, waitMs: number): Promise<ServerConnection> {
  const place = serverPlace(address)
  const db = openPool(place, waitMs)
  try {
    const { rows: [server] } = await sql<ServerSettings>`select current_setting('server_version_num')::int as number, current_setting('server_version') as version,
      current_setting('server_encoding') as encoding, current_setting('fsync') as fsync, current_schema() as schema`.execute(db)
    const wrong = server === undefined ? 'it says nothing of itself' : unfit(server)
    if (server === undefined || wrong !== undefined) throw new LedgerServerFault(place.shown, 'other', `No ledger can be kept at ${place.shown}: ${String(wrong)}.`)
    return { flavour: 'postgres', path: place.shown, waitMs, version: server.version.split(' ')[0] ?? server.version, db }
  } catch (error) {
    await db.destroy()
    throw error
  }
}

/**
 * Beside a file a copy is kept before it is brought to this version; beside a database there is no place for one. So a ledger
 * there is not changed: it goes over by way of a file into a database of its own, and the one that it was stays.
 */
async function refuseOlder({ db, path }: ServerConnection): Promise<void> {
  const steps = await new Migrator({ db, provider: migrations }).getMigrations()
  const due = steps.find(({ executedAt }) => executedAt === undefined)
  if (due === undefined || steps.every(({ executedAt }) => executedAt === undefined)) return
  const { seq } = await headOf(db)
  if (seq === 0) return
  throw new LedgerServerFault(path, 'other', `The ledger ${path} is of an older version of this program (before ${due.name}), and a ledger on a server is not changed: nothing was. `
    + 'With the program that it was kept by, copy it into a file (copy-ledger). Open that file with this one, which keeps it as it was beside itself; copy it into a new, empty database (copy-ledger), and name that at every desk (set-storage). Let nobody post at the old place any more.')
}

interface ServerSettings { readonly number: number; readonly version: string; readonly encoding: string; readonly fsync: string; readonly schema: string | null }

function unfit({ number, version, encoding, fsync, schema }: ServerSettings): string | undefined {
  if (number < OLDEST) return `the server is PostgreSQL ${version}, and 15 or later is needed`
  if (encoding !== 'UTF8') return `the database keeps its text as ${encoding}; make one with encoding UTF8`
  if (fsync !== 'on') return 'the server does not wait for its disk (fsync = off), so that what is booked could be lost'
  if (schema === null) return 'the role sees no schema to make its tables in; grant it create on schema public'
  return undefined
}
