import { setImmediate } from 'node:timers/promises'
import { sql } from 'kysely'
import type { Progress } from '../operations/contracts/index.ts'
import { checkChain } from './check-chain.ts'
import { checkProjections } from './check-projections.ts'
import { checkSchema } from './check-schema.ts'
import { attempt, type Checking } from './checking.ts'
import { openInMemory, shut } from './ledger-file.ts'
import { openToRead } from './sqlite.ts'
import type { Difference, LedgerCheck } from './store.ts'

/** More than these are counted, not listed. */
const LISTED = 100

/**
 * Checks the file, its schema, every entry, every document and every projection, without changing anything.
 * @throws the signal's reason when it was cancelled
 */
export async function checkLedger(path: string, waitMs: number, progress: (step: Progress) => void, signal: AbortSignal): Promise<LedgerCheck> {
  const found: Difference[] = []
  let more = 0
  const file = openToRead(path, waitMs)
  const memory = await openInMemory()
  // only projections are made in memory, so what they refer to is not there
  memory.raw.exec('pragma foreign_keys = off')
  try {
    const seen = await file.db.transaction().execute((held) => inspect({
      file: held, again: memory.db,
      differs: (where, what) => { if (found.length < LISTED) found.push({ where, what }); else more += 1 },
      step: async (at) => {
        progress(at)
        await setImmediate()
        signal.throwIfAborted()
      },
    }))
    const differences = more === 0 ? found : [...found, { where: 'the ledger', what: `${more} more differences` }]
    return { whole: differences.length === 0, ...seen, differences }
  } finally {
    await shut(file)
    await shut(memory)
  }
}

async function inspect(check: Checking): Promise<Pick<LedgerCheck, 'entries' | 'tickets' | 'head'>> {
  await check.step({ done: 0, of: 0, what: 'file' })
  await attempt(check, 'the file', () => checkFile(check))
  await attempt(check, 'the schema', () => checkSchema(check))
  const seen = await checkChain(check)
  await checkProjections(check)
  return seen
}

/** The file's own structure: pages, indexes, column types, references. */
async function checkFile({ file, differs }: Checking): Promise<void> {
  const { rows } = await sql<{ integrity_check: string }>`pragma integrity_check(20)`.execute(file)
  for (const { integrity_check: words } of rows) if (words !== 'ok') differs('the file', words)
  const { rows: loose } = await sql<{ table: string; rowid: number; parent: string }>`pragma foreign_key_check`.execute(file)
  for (const { table, rowid, parent } of loose) differs(`${table} ${rowid}`, `it refers to a row of ${parent} that is not there`)
}
