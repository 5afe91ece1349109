import { copyFileSync } from 'node:fs'
import { join } from 'node:path'
import { canonicalJson, chainEntry, GENESIS, versionHash, type Entry } from '../../core/ledger/index.ts'
import type { Version } from '../../core/ticket/index.ts'
import { recomputesBy } from '../../main/operations/recomputes.ts'
import { openStore, type LedgerCheck } from '../../main/store/index.ts'
import { entriesBetween, rowOf } from '../../main/store/entry-rows.ts'
import { openLedgerFile, shut } from '../../main/store/ledger-file.ts'
import { rebuildProjections } from '../../main/store/projections.ts'
import { tamper } from './evidence.ts'

/** A ledger with tickets as the program posts them, documents and signatures and all: 46 entries, tickets at 39–43 and 45. */
const POSTED = join(import.meta.dirname, '../fixtures/ledgers/2026-11-25-first-ledger.db')

/** The software that recomputes in these tests; no ticket was computed by it. */
export const RECOMPUTING = { name: 'Dipledger', version: '9.9.9', core: '9'.repeat(64) } as const

/** A copy of {@link POSTED}, brought to the schema of today. */
export async function aPostedLedger(path: string): Promise<string> {
  copyFileSync(POSTED, path)
  const store = await openStore(path)
  await store.close()
  return path
}

/**
 * Rewrites a ledger as somebody would who has the program and the file: the entries are changed, tanks and products are named
 * by their new hashes, every ticket names the head it now stands on, every hash after it is worked out again, and the
 * projections are made anew.
 */
export async function rewrite(path: string, change: (entry: Entry) => Entry): Promise<void> {
  const opened = await openLedgerFile(path, 1000)
  const entries: Entry[] = []
  const hashes = new Map<number, string>()
  const renamed = (version: Version): Version => ({ ...version, hash: hashes.get(version.seq) ?? version.hash })
  for await (const entry of entriesBetween(opened.db, 1, Number.MAX_SAFE_INTEGER)) {
    const previous = entries.at(-1)?.hash ?? GENESIS
    const changed = standing(change(entry), previous, renamed)
    if (changed.kind === 'tank-set') hashes.set(entry.seq, versionHash(changed.body.tank))
    if (changed.kind === 'product-set') hashes.set(entry.seq, versionHash(changed.body.product))
    entries.push(chainEntry(changed, { seq: entry.seq, previous }))
  }
  await shut(opened)
  tamper(path, (raw) => {
    for (const entry of entries) {
      const { seq, ...columns } = rowOf(entry)
      raw.prepare(`update entry set ${Object.keys(columns).map((name) => `${name} = ?`).join(', ')} where seq = ?`).run(...Object.values(columns), seq)
    }
  })
  const again = await openLedgerFile(path, 1000)
  await again.db.transaction().execute((held) => rebuildProjections(held, entriesBetween(held, 1, Number.MAX_SAFE_INTEGER)))
  await shut(again)
}

function standing(entry: Entry, head: string, renamed: (version: Version) => Version): Entry {
  if (entry.kind === 'inventory-measured') return { ...entry, body: { ...entry.body, tank: renamed(entry.body.tank), product: renamed(entry.body.product) } }
  if (entry.kind !== 'ticket-posted') return entry
  const { ticket } = entry.body
  return { ...entry, body: { ...entry.body, ticket: { ...ticket, tank: renamed(ticket.tank), product: renamed(ticket.product), ledger: { ...ticket.ledger, head } } } }
}

/** A value with one text in it replaced everywhere. */
export function replaced<T>(value: T, text: string, by: string): T {
  const written = canonicalJson(value)
  if (!written.includes(text)) throw new Error(`${text} does not stand there`)
  return JSON.parse(written.replaceAll(text, by)) as T
}

/** Checks form alone, or everything computed too. */
export async function checkPosted(path: string, recompute: boolean): Promise<LedgerCheck> {
  const store = await openStore(path)
  try {
    return await store.check(() => undefined, new AbortController().signal, ...(recompute ? [recomputesBy(RECOMPUTING)] : []))
  } finally {
    await store.close()
  }
}
