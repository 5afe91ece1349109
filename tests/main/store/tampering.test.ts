import { DatabaseSync } from 'node:sqlite'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { canonicalJson, chainEntry, type Entry } from '../../../core/ledger/index.ts'
import { entriesBetween, rowOf } from '../../../main/store/entry-rows.ts'
import { openLedgerFile, shut } from '../../../main/store/ledger-file.ts'
import type { LedgerCheck } from '../../../main/store/index.ts'
import { aFinishedLedger, checkFile, dump, EVIDENCE, evidenceColumns, isNumeric, keyOf, tamper } from '../../support/evidence.ts'

let ledger: Awaited<ReturnType<typeof aFinishedLedger>>
let count = 0
beforeAll(async () => { ledger = await aFinishedLedger() })
afterAll(() => { ledger.remove() })

async function tampered(act: (raw: DatabaseSync) => void): Promise<LedgerCheck> {
  count += 1
  const path = ledger.copy(`tampered-${count}.db`)
  tamper(path, act)
  return checkFile(path)
}

const places = (found: LedgerCheck): readonly string[] => found.differences.map((difference) => difference.where)

/** One row of each table: a ticket that was voided, its document and movement; an inventory, a share, a period. */
const ROWS: Readonly<Record<(typeof EVIDENCE)[number], number>> = { entry: 5, document: 5, ticket: 5, movement: 500, measurement: 4, allocation: 1500, period: 17, alarm: 18, trail: 5, trail_about: 500, ticket_word: 10020 }

describe('untouched', () => {
  it('the ledger is whole, and dropping and making the triggers again changes nothing', async () => {
    expect(await checkFile(ledger.path)).toMatchObject({ whole: true, entries: 18, tickets: 7, differences: [] })
    expect(await tampered(() => undefined)).toMatchObject({ whole: true, differences: [] })
  })
})

describe('one changed value is found, and the table, the row and the column are named', () => {
  const columns = EVIDENCE.flatMap((table) => evidenceColumns(table).map((column): [table: typeof table, column: string] => [table, column]))

  it.each(columns)('%s.%s', async (table, column) => {
    const row = ROWS[table]
    const key = keyOf(table)
    const found = await tampered((raw) => {
      const before = raw.prepare(`select ${column} as value from ${table} where ${key} = ?`).get(row)?.['value']
      const changed = another(before ?? null, isNumeric(table, column))
      expect(raw.prepare(`update ${table} set ${column} = ? where ${key} = ?`).run(changed, row).changes).toBe(1)
    })
    expect(found.whole).toBe(false)
    const where = places(found).join('\n')
    // a row whose number was changed is missing at its place
    if (column === key) expect(where).toMatch(new RegExp(`^${table} (${row}|${row + 1000}|${row + 1})\\b`, 'm'))
    // a body is named by what it breaks: the hash of its entry
    else if (table === 'entry' && ['kind', 'at', 'by', 'body', 'origin'].includes(column)) expect(where).toMatch(/^entry 5(, column (hash|body))?$/m)
    else expect(where).toMatch(new RegExp(`^${table} ${row}, column ${column}$`, 'm'))
  })
})

/** A value of the same type that differs in one place. */
function another(value: unknown, numeric: boolean): string | number | Uint8Array {
  if (numeric) return Number(value) + 1000
  if (value instanceof Uint8Array) return Uint8Array.from(value, (byte, i) => (i === 100 ? byte ^ 1 : byte))
  if (typeof value !== 'string' || value === '') return 'x'
  const last = value.at(-1) === '0' ? '1' : '0'
  return value.length === 64 ? last + value.slice(1) : value.slice(0, -1) + last
}

describe('what else can be done to a ledger is found', () => {
  it.each<[string, (raw: DatabaseSync) => void, RegExp]>([
    ['a trigger that is named almost as a table of SQLite', (raw) => raw.exec('create trigger sqliteXstat1 after insert on draft begin delete from proposal; end'), /^trigger sqliteXstat1$/m],
    ['the last entry taken away', (raw) => raw.exec('delete from entry where seq = 18'), /^alarm 18$/m],
    ['an entry taken out of the middle', (raw) => raw.exec('delete from entry where seq = 13'), /^entry 14, column seq$/m],
    ['a document taken away', (raw) => raw.exec('delete from document where seq = 6'), /^document 6$/m],
    ['a document of nothing', (raw) => raw.exec(`insert into document values (13, '${'a'.repeat(64)}', x'00')`), /^document 13$/m],
    ['two documents exchanged', (raw) => raw.exec('update document set seq = 99 where seq = 6; update document set seq = 6 where seq = 7; update document set seq = 7 where seq = 99'), /^document 6, column sha256$/m],
    ['a ticket taken off the register', (raw) => raw.exec('delete from ticket where seq = 7'), /^ticket 7$/m],
    ['a void made undone in the register', (raw) => raw.exec('update ticket set voided_seq = null, voided_at = null, void_reason = null where seq = 5'), /^ticket 5, column voided_seq$/m],
    ['a movement that nothing posted', (raw) => raw.exec("create temp table one as select * from movement where id = 600; update one set id = 300, seq = 3; insert into movement select * from one"), /^movement 300$/m],
    ['an owner\'s share made larger', (raw) => raw.exec("update allocation set nsv = '26.000' where id = 1500"), /^allocation 1500, column nsv$/m],
    ['a period made longer', (raw) => raw.exec("update period set to_at = '2026-05-01T05:00:00Z' where seq = 17"), /^period 17, column to_at$/m],
    ['an alarm made as if it had been cleared', (raw) => raw.exec('update alarm set cleared_seq = 18, cleared_order = raised_order'), /^alarm 18, column cleared_seq$/m],
    ['another person in the audit trail', (raw) => raw.exec("update trail set person = 'j-vance' where seq = 15"), /^trail 15, column person$/m],
    ['another station in an entry', (raw) => raw.exec("update entry set origin = replace(origin, 'jetty', 'pump') where seq = 15"), /^entry 15, column hash$/m],
    ['the station of an entry taken away', (raw) => raw.exec('update entry set origin = null where seq = 15'), /^entry 15, column hash$/m],
    ['a measurement taken away', (raw) => raw.exec('delete from measurement where seq = 4'), /^measurement 4$/m],
    ['a body with a blank more', (raw) => raw.exec("update entry set body = replace(body, '{\"number\"', '{ \"number\"') where seq = 11"), /^entry 11, column body$/m],
    ['an entry of zero length', (raw) => raw.exec("update entry set body = '' where seq = 8"), /^entry 8$/m],
    ['bytes that are no text', (raw) => raw.exec("update entry set by = cast(x'4dff' as text) where seq = 8"), /^entry 8, column by$/m],
    ['a table more', (raw) => raw.exec('create table note (text text)'), /^table note$/m],
    ['an index less', (raw) => raw.exec('drop index movement_by_tank'), /^index movement_by_tank$/m],
  ])('%s', async (_, act, where) => {
    const found = await tampered(act)
    expect(found.whole).toBe(false)
    expect(places(found).join('\n')).toMatch(where)
  })

  it.each(['entry_is_never_updated', 'entry_is_never_deleted', 'entry_follows_the_last', 'document_is_never_updated', 'document_is_never_deleted', 'document_is_never_replaced'])('the trigger %s gone, or made harmless', async (name) => {
    for (const change of [`drop trigger ${name}`, `drop trigger ${name}; create trigger ${name} before update on entry begin select 1; end`]) {
      count += 1
      const path = ledger.copy(`trigger-${count}.db`)
      const raw = new DatabaseSync(path)
      raw.exec(change)
      raw.close()
      expect(places(await checkFile(path))).toEqual([`trigger ${name}`])
    }
  })

  it('an entry written anew with every later hash worked out again: tickets name the head they stand on', async () => {
    const path = ledger.copy('rewritten.db')
    const opened = await openLedgerFile(path, 1000)
    const entries: Entry[] = []
    for await (const entry of entriesBetween(opened.db, 1, 99)) {
      const changed = entry.kind === 'inventory-measured' && entry.seq === 4 ? { ...entry, by: 'Somebody else' } : entry
      entries.push(chainEntry(changed, { seq: entry.seq, previous: entries.at(-1)?.hash ?? '0'.repeat(64) }))
    }
    await shut(opened)
    tamper(path, (raw) => {
      raw.exec('delete from entry')
      for (const entry of entries) {
        const row = rowOf(entry)
        expect(row.body).toBe(canonicalJson(entry.body))
        raw.prepare(`insert into entry (${Object.keys(row).join(', ')}) values (${Object.keys(row).map(() => '?').join(', ')})`).run(...Object.values(row))
      }
    })
    const found = await checkFile(path)
    expect(found.differences[0]).toMatchObject({ where: 'trail 4, column by' })
    expect(found.differences.find(({ where }) => where === 'entry 5')?.what).toContain('the head that the ticket names')
  })

  it('thousands of differences are counted, and the first hundred listed', async () => {
    const found = await tampered((raw) => raw.exec("update ticket set gsv = 'a', nsv = 'b', weight = 'c', words = 'd', kind = 'e', tank = 'f', product = 'g', product_name = 'h', from_party = 'i', to_party = 'j', opened_at = 'k', closed_at = 'l', issued_at = 'm', gsv_unit = 'n', nsv_unit = 'o', weight_unit = 'p'"))
    expect(found.differences).toHaveLength(101)
    expect(found.differences.at(-1)?.what).toBe('12 more differences')
  })
})

describe('the dump that the tests of single bytes rely on', () => {
  it('shows every table of evidence', () => {
    const lines = dump(ledger.path).split('\n')
    expect(EVIDENCE.map((table) => lines.includes(table))).toEqual(EVIDENCE.map(() => true))
    expect(lines).toHaveLength(EVIDENCE.length + 18 + 7 + 7 + 9 + 2 + 2 + 1 + 1 + 18 + 10 + 180)
  })
})
