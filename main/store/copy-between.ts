import { setImmediate } from 'node:timers/promises'
import type { Kysely } from 'kysely'
import { Refused } from '../../core/refusal/index.ts'
import type { Progress } from '../operations/contracts/index.ts'
import { checkHeld } from './check.ts'
import type { Connection, ServerConnection } from './connection.ts'
import { copyRows, firstFilled, type CopiedRows, type CopyStep } from './copy-rows.ts'
import { headOf } from './entry-rows.ts'
import { heldStill, mayPause } from './hold-still.ts'
import { openEmptyFile, shut } from './ledger-file.ts'
import { openLedgerServer } from './ledger-server.ts'
import { alone } from './post-on-server.ts'
import type { Schema } from './schema.ts'
import { openToRead } from './sqlite.ts'
import type { Head } from './store.ts'

/** What is in a copy. */
export interface Copied extends CopiedRows { readonly head: Head; readonly tickets: number }

const WAIT_MS = 15_000
const CLAUSE = 'HOUSE copying a ledger'

/** Writes the whole ledger of a server, as it stands at this moment, into a SQLite file that is empty or not there. */
export async function copyServerToFile(server: ServerConnection, path: string, progress: (step: Progress) => void, signal: AbortSignal): Promise<void> {
  const file = await openEmptyFile(path, WAIT_MS)
  try {
    await asItStands(server, (from) => file.db.transaction().execute((to) => copyRows(from, to, stepOf(progress, signal))))
    file.raw.exec('pragma journal_mode = delete')
  } finally {
    await shut(file)
  }
}

/**
 * Copies a ledger, as it stands at this moment, into an empty database of a server: in one transaction, which is
 * committed only after every entry, document and projection of the copy was checked.
 * @throws Refused where the database is not empty, or the ledger does not hold
 */
export async function copyToServer(ledger: Connection, address: string, progress: (step: Progress) => void, signal: AbortSignal): Promise<Copied> {
  const server = await openLedgerServer(address, WAIT_MS)
  try {
    const copied = await alone(server.db, (desk) => desk.transaction().setIsolationLevel('repeatable read').execute((to) => fill(ledger, to, server.path, progress, signal)))
    const head = await headOf(server.db)
    if (head.hash !== copied.head.hash) throw new Error(`The head of the copy at ${server.path} is ${head.hash}, not ${copied.head.hash}`)
    return copied
  } finally {
    await shut(server)
  }
}

async function fill(ledger: Connection, to: Kysely<Schema>, place: string, progress: (step: Progress) => void, signal: AbortSignal): Promise<Copied> {
  if (await firstFilled(to) !== undefined) throw new Refused([{ code: 'path-taken', path: 'to', value: place, limit: 'give the address of an empty database', clause: CLAUSE }])
  await mayPause(to)
  const [rows, head] = await asItStands(ledger, async (from) => [await copyRows(from, to, stepOf(progress, signal)), await headOf(from)] as const)
  const found = await checkHeld(to, { what: 'copy', look: () => Promise.resolve() }, progress, signal)
  const [first] = found.differences
  if (first !== undefined || found.head !== head.hash) {
    throw new Refused([{ code: 'ledger-damaged', path: 'ledger', value: `${first?.where ?? 'the head'}: ${first?.what ?? 'it differs'}`, limit: 'nothing was copied; run verify-ledger and go back to a backup', clause: CLAUSE }])
  }
  return { ...rows, head, tickets: found.tickets }
}

/** Reads a ledger in one transaction, while others go on posting. */
async function asItStands<T>(ledger: Connection, act: (from: Kysely<Schema>) => Promise<T>): Promise<T> {
  if (ledger.flavour === 'postgres') return heldStill(ledger.db, act)
  const file = openToRead(ledger.path, WAIT_MS)
  try {
    return await file.db.transaction().execute(act)
  } finally {
    await shut(file)
  }
}

function stepOf(progress: (step: Progress) => void, signal: AbortSignal): CopyStep {
  return async (done, of, what) => {
    progress({ done, of, what })
    await setImmediate()
    signal.throwIfAborted()
  }
}
