import { setImmediate } from 'node:timers/promises'
import { sql, type Kysely } from 'kysely'
import type { Progress } from '../operations/contracts/index.ts'
import { checkChain } from './check-chain.ts'
import { checkProjections } from './check-projections.ts'
import { checkSchema } from './check-schema.ts'
import { checkServerSchema } from './check-server-schema.ts'
import { attempt, type Checking } from './checking.ts'
import type { ServerConnection } from './connection.ts'
import { entryAt } from './entry-rows.ts'
import { heldStill } from './hold-still.ts'
import { openBeside, shut } from './ledger-file.ts'
import { recomputing } from './recomputing.ts'
import type { Schema } from './schema.ts'
import { openToRead } from './sqlite.ts'
import type { Difference, LedgerCheck, Recomputes } from './store.ts'

/** More than these are counted, not listed. */
const LISTED = 100

/**
 * Checks a ledger's file, its schema, every entry, every document and every projection, without changing anything.
 * @param recompute by what computed entries are made again; absent: their form alone is checked
 * @throws the signal's reason when it was cancelled
 */
export async function checkLedger(path: string, waitMs: number, progress: (step: Progress) => void, signal: AbortSignal, recompute?: Recomputes): Promise<LedgerCheck> {
  const file = openToRead(path, waitMs)
  try {
    return await file.db.transaction().execute((held) => checkHeld(held, { what: 'file', look: fileAndSchema }, progress, signal, recompute))
  } finally {
    await shut(file)
  }
}

/** Checks a ledger on a server in the same way; that its pages and indexes hold is the server's own business. */
export async function checkLedgerServer(server: ServerConnection, progress: (step: Progress) => void, signal: AbortSignal, recompute?: Recomputes): Promise<LedgerCheck> {
  return heldStill(server.db, (held) => checkHeld(held, {
    what: 'schema', look: (check) => attempt(check, 'the schema', () => checkServerSchema(server, check.differs)),
  }, progress, signal, recompute))
}

/** What is looked at before the entries, and its name. */
interface Outside { readonly what: string; look(check: Checking): Promise<void> }

/** Checks what a transaction sees. */
export async function checkHeld(held: Kysely<Schema>, { what, look }: Outside, progress: (step: Progress) => void, signal: AbortSignal, recompute?: Recomputes): Promise<LedgerCheck> {
  const found: (Difference & { readonly seq: number })[] = []
  let more = 0
  const beside = await openBeside()
  // only projections are made there, so what they refer to is not; in one transaction that is never ended, nothing is written out before the cache is full
  beside.raw.exec('pragma foreign_keys = off; begin')
  try {
    const check: Checking = {
      file: held, again: beside.db,
      recompute: recompute === undefined ? null : recomputing((seq) => entryAt(held, seq), recompute.software),
      closingChecks: recompute?.closingChecks ?? null,
      differs: (where, says, seq = 0) => { if (found.length < LISTED) found.push({ where, what: says, seq }); else more += 1 },
      step: async (at) => {
        progress(at)
        await setImmediate()
        signal.throwIfAborted()
      },
    }
    await check.step({ done: 0, of: 0, what })
    await look(check)
    const seen = await checkChain(check)
    await checkProjections(check)
    // what concerns no single entry first, then as the entries follow each other
    const listed = found.toSorted((one, other) => one.seq - other.seq).map((one): Difference => ({ where: one.where, what: one.what }))
    const differences = more === 0 ? listed : [...listed, { where: 'the ledger', what: `${more} more differences` }]
    return { whole: differences.length === 0, ...seen, differences }
  } finally {
    await shut(beside)
  }
}

async function fileAndSchema(check: Checking): Promise<void> {
  await attempt(check, 'the file', () => checkFile(check))
  await attempt(check, 'the schema', () => checkSchema(check))
}

/** The file's own structure: pages, indexes, column types, references. */
async function checkFile({ file, differs }: Checking): Promise<void> {
  const { rows } = await sql<{ integrity_check: string }>`pragma integrity_check(20)`.execute(file)
  for (const { integrity_check: words } of rows) if (words !== 'ok') differs('the file', words)
  const { rows: loose } = await sql<{ table: string; rowid: number; parent: string }>`pragma foreign_key_check`.execute(file)
  for (const { table, rowid, parent } of loose) differs(`${table} ${rowid}`, `it refers to a row of ${parent} that is not there`)
}
