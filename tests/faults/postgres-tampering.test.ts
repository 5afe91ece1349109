import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openStore, type LedgerStore } from '../../main/store/index.ts'
import { check, postTicket, setUp } from '../support/ledgers.ts'
import { aDatabase, ask } from '../support/postgres.ts'
import { adjustmentPosting } from '../support/postings.ts'

let address = ''
let store: LedgerStore
beforeAll(async () => {
  address = await aDatabase()
  store = await openStore(address)
  await setUp(store)
  await postTicket(store)
  await postTicket(store)
  await store.append([adjustmentPosting('-1.500')])
})
afterAll(() => store.close())

describe('whoever owns the database', () => {
  it.each([
    ["update entry set by = 'Somebody else' where seq = 1", 'entries are never updated; a mistake is mended by a later entry'],
    ['delete from entry where seq = 6', 'entries are never deleted; a mistake is mended by a later entry'],
    ['truncate entry cascade', 'entries are never deleted; a mistake is mended by a later entry'],
    ["insert into entry select 9, kind, at, by, body, previous, repeat('a', 64), origin from entry where seq = 6", 'an entry takes the number after the last'],
    ["update document set bytes = '\\x00'", 'signed documents are never updated'],
    ['delete from document', 'signed documents are never deleted'],
    ['truncate document', 'signed documents are never deleted'],
    ['insert into document select * from document', 'signed documents are never replaced'],
  ])('is refused: %s', async (text, message) => {
    await expect(ask(address, text)).rejects.toThrow(message)
  })

  it('and the ledger is as it was', async () => {
    expect(await check(store)).toMatchObject({ whole: true, entries: 6, tickets: 2, differences: [] })
  })
})

/** What an administrator can do who means harm, and how the check names it; `undo` puts the ledger back. */
describe('what an administrator does behind the guards is found', () => {
  const unguarded = (text: string): string => `set session_replication_role = replica; ${text}`
  it.each([
    ['a body changed', unguarded("update entry set body = replace(body, '-1.500', '-2.500') where seq = 6"), unguarded("update entry set body = replace(body, '-2.500', '-1.500') where seq = 6"), /^entry 6, column hash$/m],
    ['a name changed', unguarded("update entry set by = by || 'x' where seq = 6"), unguarded("update entry set by = left(by, -1) where seq = 6"), /^entry 6/m],
    ['a byte of a document', unguarded('update document set bytes = set_byte(bytes, 7, get_byte(bytes, 7) # 1) where seq = 4'), unguarded('update document set bytes = set_byte(bytes, 7, get_byte(bytes, 7) # 1) where seq = 4'), /^document 4, column bytes$/m],
    ['a figure of the register', "update ticket set nsv = nsv || '1' where seq = 5", 'update ticket set nsv = left(nsv, -1) where seq = 5', /^ticket 5, column nsv$/m],
    ['a movement taken away', 'create table kept as select * from movement where seq = 6; delete from movement where seq = 6', 'insert into movement select * from kept; drop table kept', /^movement 600$/m],
    ['a guard switched off', 'alter table entry disable trigger entry_is_never_updated', 'alter table entry enable trigger entry_is_never_updated', /^trigger entry_is_never_updated$/m],
    ['a guard made harmless', "create or replace function entry_is_never_updated() returns trigger language plpgsql as 'begin return new; end'",
      "create or replace function entry_is_never_updated() returns trigger language plpgsql as $guard$ begin raise exception using message = 'entries are never updated; a mistake is mended by a later entry', errcode = 'P0001'; end $guard$", /^function entry_is_never_updated$/m],
    ['a rule that swallows entries', 'create rule gone as on insert to entry do instead nothing', 'drop rule gone on entry', /^rule gone$/m],
    ['a table that a crash empties', 'alter table draft set unlogged', 'alter table draft set logged', /^table draft$/m],
    ['an index less', 'drop index movement_by_time', 'create index movement_by_time on movement (booked_order)', /^index movement_by_time$/m],
    ['a table more', 'create table note (text text)', 'drop table note', /^table note$/m],
  ])('%s', async (_, done, undone, where) => {
    await ask(address, done)
    try {
      const { whole, differences } = await check(store)
      expect(whole).toBe(false)
      expect(differences.map((difference) => difference.where).join('\n')).toMatch(where)
    } finally {
      await ask(address, undone)
    }
  })

  it('and put back, the ledger is whole again', async () => {
    expect(await check(store)).toMatchObject({ whole: true, differences: [] })
  })
})
