import { copyFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { openBeside, shut } from '../../main/store/ledger-file.ts'
import { openStore, type LedgerCheck } from '../../main/store/index.ts'
import { aFolder, check, postTicket, setUp } from './ledgers.ts'
import { PROJECTIONS } from '../../main/store/projections.ts'
import { adjustmentPosting, alarmPosting, allocationPosting, inventoryPosting, lineFillPosting, periodPosting, versionFrom, voidPosting } from './postings.ts'

/** The tables that count as evidence. */
export const EVIDENCE = ['entry', 'document', ...PROJECTIONS] as const

/** The column that names a row of a table of evidence. */
export function keyOf(table: (typeof EVIDENCE)[number]): 'id' | 'seq' {
  return table === 'movement' || table === 'allocation' || table === 'trail_about' || table === 'ticket_word' ? 'id' : 'seq'
}

/**
 * A closed ledger, all of it in its one file, with every kind of row: entries 1–3 set up, 4 an inventory, 5–10 tickets of
 * which the first is voided by 11 and replaced by 12, 13 an adjustment, 14 an inventory, 15 a change of owner and 16 a line
 * that was filled, both from a desk that is named, 17 a period, 18 an alarm; a draft and a key beside them.
 */
export async function aFinishedLedger(tickets = 6): Promise<{ readonly path: string; readonly copy: (name: string) => string; readonly remove: () => void }> {
  const folder = aFolder()
  const path = join(folder.path, 'ledger.db')
  const store = await openStore(path)
  const [, tank, product] = await setUp(store)
  if (tank?.kind !== 'tank-set' || product?.kind !== 'product-set') throw new Error('not set up')
  await store.append([inventoryPosting('100.000', '2026-03-14T06:00:00Z', versionFrom(tank), versionFrom(product))])
  for (let i = 0; i < tickets; i += 1) await postTicket(store, { remarks: `Part ${i + 1} of ${tickets}` })
  await store.append([voidPosting('CPT-000001')])
  await postTicket(store, { replaces: 'CPT-000001' })
  await store.append([adjustmentPosting('-1.500'), inventoryPosting('139.000', '2026-03-17T06:00:00Z', versionFrom(tank), versionFrom(product))])
  await store.append([allocationPosting(), lineFillPosting(versionFrom(product)), periodPosting(), alarmPosting()], { secrets: { key: { identity: 'm-duarte', key: 'AAAA' } } })
  await store.saveDraft({ id: 'd-1', kind: 'transfer', title: 'Receipt', body: { level: '41 ft' }, savedAt: '2026-03-14T06:00:00Z' })
  await store.close()
  return { path, copy: (name) => { const to = join(folder.path, name); copyFileSync(path, to); return to }, remove: folder.remove }
}

/** Opens a ledger and checks it; what stops it from being opened is a difference too. */
export async function checkFile(path: string): Promise<LedgerCheck> {
  try {
    const store = await openStore(path)
    try {
      return await check(store)
    } finally {
      await store.close()
    }
  } catch (error) {
    const what = error instanceof Error ? error.message : String(error)
    return { whole: false, entries: 0, tickets: 0, head: '', recomputed: 0, noticed: [], differences: [{ where: 'opening', what }] }
  }
}

/** Changes a closed ledger as someone with any database program could, triggers or not. */
export function tamper(path: string, act: (raw: DatabaseSync) => void): void {
  const raw = new DatabaseSync(path, { enableForeignKeyConstraints: false })
  const triggers = raw.prepare("select name, sql from sqlite_schema where type = 'trigger'").all()
  for (const { name } of triggers) raw.exec(`drop trigger ${String(name)}`)
  act(raw)
  for (const { sql } of triggers) raw.exec(String(sql))
  raw.close()
}

const made = await openBeside()
const COLUMNS = new Map(EVIDENCE.map((table) => [table, made.raw.prepare(`pragma table_info(${table})`).all().map((column) => ({ name: String(column['name']), type: String(column['type']) }))]))
await shut(made)

/** Every column of a table of evidence, as the migrations make them. */
export function evidenceColumns(table: (typeof EVIDENCE)[number]): readonly string[] {
  return (COLUMNS.get(table) ?? []).map(({ name }) => name)
}

/** Whether a column of evidence holds numbers. */
export function isNumeric(table: (typeof EVIDENCE)[number], column: string): boolean {
  return COLUMNS.get(table)?.find(({ name }) => name === column)?.type.toLowerCase() === 'integer'
}

/** Every byte of evidence in a ledger, in the order of its rows; what cannot be read is said. */
export function dump(path: string): string {
  try {
    const raw = new DatabaseSync(path, { readOnly: true })
    try {
      return EVIDENCE.map((table) => {
        const rows = raw.prepare(`select ${evidenceColumns(table).map((column) => `typeof(${column}) || ':' || hex(cast(${column} as blob))`).join(" || ' ' || ")} as line from ${table} order by rowid`).all()
        return `${table}\n${rows.map((row) => String(row['line'])).join('\n')}`
      }).join('\n')
    } finally {
      raw.close()
    }
  } catch (error) {
    return `unreadable: ${error instanceof Error ? error.message : String(error)}`
  }
}
