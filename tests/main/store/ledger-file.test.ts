import { chmodSync, chownSync, existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs'
import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { afterAll, describe, expect, it, vi } from 'vitest'
import { LedgerFileFault, openStore } from '../../../main/store/index.ts'
import { openLedgerFile, shut } from '../../../main/store/ledger-file.ts'
import { pragma } from '../../../main/store/sqlite.ts'
import { aFolder, check, postTicket, setUp } from '../../support/ledgers.ts'

const folder = aFolder()
afterAll(folder.remove)
const at = (name: string): string => join(folder.path, name)

async function faultOf(path: string): Promise<Error> {
  const error: unknown = await openStore(path, { waitMs: 200 }).then((store) => store.close()).catch((reason: unknown) => reason)
  expect(error).toBeInstanceOf(LedgerFileFault)
  return error instanceof Error ? error : new Error('it was opened')
}

describe('a ledger file', () => {
  it('is written through to disk before posting returns, and does not trust its schema', async () => {
    const opened = await openLedgerFile(at('pragmas.db'), 5000)
    const settings = ['journal_mode', 'synchronous', 'foreign_keys', 'trusted_schema', 'recursive_triggers', 'cell_size_check']
    // SQLite's manual: synchronous 2 is FULL
    expect(settings.map((name) => pragma(opened.raw, name))).toEqual(['wal', 2, 1, 0, 1, 1])
    await shut(opened)
  })

  it('has strict tables only, but for the two of the migrator', async () => {
    await (await openStore(at('strict.db'))).close()
    const raw = new DatabaseSync(at('strict.db'), { readOnly: true })
    const tables = raw.prepare("select name, strict from pragma_table_list where schema = 'main' and type = 'table' and name not like 'sqlite_%' order by name").all()
    raw.close()
    expect(tables.filter((table) => table['strict'] !== 1).map((table) => table['name'])).toEqual(['kysely_migration', 'kysely_migration_lock'])
    expect(tables.filter((table) => table['strict'] === 1).map((table) => table['name'])).toEqual(['alarm', 'allocation', 'document', 'draft', 'entry', 'measurement', 'movement', 'passphrase', 'period', 'proposal', 'protected_key', 'ticket', 'ticket_word', 'trail', 'trail_about'])
  })

  it('refuses to change or delete what was posted', async () => {
    const store = await openStore(at('triggers.db'))
    await setUp(store)
    await postTicket(store)
    await store.close()
    const raw = new DatabaseSync(at('triggers.db'))
    for (const table of ['entry', 'document']) {
      const columns = raw.prepare(`pragma table_info(${table})`).all().map((column) => String(column['name']))
      for (const column of columns) expect(() => raw.exec(`update ${table} set ${column} = ${column} where seq = 4`), `${table}.${column}`).toThrow('never updated')
      expect(() => raw.exec(`delete from ${table}`)).toThrow('never deleted')
    }
    expect(() => raw.exec("insert into entry select seq + 2, kind, at, by, body, previous, replace(hash, substr(hash, 1, 4), '0000'), origin from entry where seq = 4")).toThrow('takes the number after the last')
    expect(() => raw.exec('insert or replace into entry select * from entry where seq = 2')).toThrow('takes the number after the last')
    expect(() => raw.exec('insert or replace into document select * from document')).toThrow('never replaced')
    raw.close()
    const again = await openStore(at('triggers.db'))
    expect(await check(again)).toMatchObject({ whole: true, entries: 4 })
    await again.close()
  })

  it('is opened again as it was left, and nothing lies beside it', async () => {
    const store = await openStore(at('alone/ledger.db'))
    await setUp(store)
    const head = await store.head()
    await store.close()
    expect(readdirSync(at('alone'))).toEqual(['ledger.db'])
    const again = await openStore(at('alone/ledger.db'))
    expect(await again.head()).toEqual(head)
    await again.close()
  })

  it('can be reached by a link', async () => {
    await (await openStore(at('real.db'))).close()
    symlinkSync(at('real.db'), at('link.db'))
    const store = await openStore(at('link.db'))
    expect(await store.head()).toMatchObject({ seq: 0 })
    await store.close()
  })
})

describe('what is no ledger is named, with what to do', () => {
  it.each<[string, string, RegExp]>([
    ['a text file', 'A letter about tanks, longer than sixteen bytes.', /is not a ledger: it is no database file.*Choose another file, or open the last backup\./],
    ['a short file', 'abc', /is not a ledger/],
    ['an empty file', '', /is empty, and a ledger never is.*open the last backup; else delete/],
  ])('%s', async (name, content, words) => {
    const path = at(name.replaceAll(' ', '-'))
    writeFileSync(path, content)
    const fault = await faultOf(path)
    expect(fault.message).toMatch(words)
    expect(fault.message).toContain(path)
    expect(readFileSync(path, 'utf8')).toBe(content)
  })

  it('a folder', async () => {
    mkdirSync(at('folder'))
    expect((await faultOf(at('folder'))).message).toContain('is not a file')
  })

  it('a database of something else', async () => {
    const raw = new DatabaseSync(at('other.db'))
    raw.exec('create table song (title text)')
    raw.close()
    const before = readFileSync(at('other.db'))
    expect((await faultOf(at('other.db'))).message).toContain('is a database, but not a ledger of this program')
    expect(readFileSync(at('other.db')).equals(before)).toBe(true)
  })

  it('a ledger of a newer version', async () => {
    await (await openStore(at('newer.db'))).close()
    const raw = new DatabaseSync(at('newer.db'))
    raw.exec("insert into kysely_migration values ('2999-01-01-later', '2999-01-01')")
    raw.close()
    expect((await faultOf(at('newer.db'))).message).toMatch(/made by a newer version of this program.*Update the program\./)
  })

  it('a damaged ledger', async () => {
    const store = await openStore(at('damaged.db'))
    await setUp(store)
    await store.close()
    const bytes = readFileSync(at('damaged.db'))
    bytes.fill(0xff, 100, 4096)
    writeFileSync(at('damaged.db'), bytes)
    expect((await faultOf(at('damaged.db'))).message).toMatch(/is damaged.*keep it aside as it is, and open the last backup\./)
  })

  it('a write-ahead log whose ledger is gone', async () => {
    writeFileSync(at('gone.db-wal'), 'x')
    expect((await faultOf(at('gone.db'))).message).toContain('Put the ledger back beside it')
    expect(existsSync(at('gone.db'))).toBe(false)
  })
})

describe('a ledger that may not be written', () => {
  // A superuser may write anything, so this is tried as nobody where the tests run as root.
  const asRoot = process.getuid?.() === 0
  const NOBODY = 65_534

  function openAsNobody(path: string): string {
    const program = `import { openStore } from ${JSON.stringify(join(import.meta.dirname, '../../../main/store/index.ts'))}
      try { await (await openStore(${JSON.stringify(path)}, { waitMs: 200 })).close(); console.log('opened') } catch (error) { console.log(error.name + ': ' + error.message) }`
    const ran = spawnSync(process.execPath, ['--input-type=module-typescript', '-e', program], { encoding: 'utf8', ...(asRoot ? { uid: NOBODY, gid: NOBODY } : {}) })
    return ran.stdout + ran.stderr
  }

  it('because the file is read-only', async () => {
    mkdirSync(at('read-only'))
    await (await openStore(at('read-only/ledger.db'))).close()
    if (asRoot) { chmodSync(folder.path, 0o755); chownSync(at('read-only'), NOBODY, NOBODY) }
    chmodSync(at('read-only/ledger.db'), 0o444)
    const said = openAsNobody(at('read-only/ledger.db'))
    expect(said).toMatch(/^LedgerFileFault: The ledger .*read-only\/ledger\.db cannot be written.*Get write permission, or copy the ledger/)
  })

  it('because it may not even be read', async () => {
    mkdirSync(at('secret'))
    await (await openStore(at('secret/ledger.db'))).close()
    if (asRoot) { chmodSync(folder.path, 0o755); chownSync(at('secret'), NOBODY, NOBODY) }
    else chmodSync(at('secret/ledger.db'), 0o000)
    expect(openAsNobody(at('secret/ledger.db'))).toMatch(/^LedgerFileFault: The ledger .*secret\/ledger\.db cannot be read/)
  })

  it('because its folder is read-only', () => {
    mkdirSync(at('closed'))
    chmodSync(at('closed'), 0o555)
    if (asRoot) chmodSync(folder.path, 0o755)
    expect(openAsNobody(at('closed/ledger.db'))).toMatch(/^LedgerFileFault: No ledger can be made at .*closed\/ledger\.db \(EACCES\)\. Check that you may write in its folder/)
  })
})

describe('a Node without SQLite', () => {
  it('is named, with what to start instead', async () => {
    const without = vi.spyOn(process, 'getBuiltinModule').mockReturnValue(undefined)
    await expect(openStore(at('nowhere/ledger.db'))).rejects.toThrow(/has no node:sqlite.*npm scripts/)
    without.mockRestore()
  })
})
