import { spawnSync } from 'node:child_process'
import { chmodSync, chownSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { afterAll, describe, expect, it } from 'vitest'
import { LedgerFileFault, openStore } from '../../main/store/index.ts'
import { bundledProgram } from '../support/bundled-program.ts'
import { aFolder, check, postTicket, setUp } from '../support/ledgers.ts'

const folder = aFolder()
afterAll(folder.remove)

describe('where a ledger lies', () => {
  it.each([
    'with spaces', 'Терминал Порт', '油槽 台帳', 'depósito São João', 'e\u0301 decomposed', "it's 100 % & more; #1", '-dash first', 'a?b=c#d', '🛢️',
  ])('in a folder named “%s”: it is made, posted to, closed, opened and checked', async (name) => {
    const path = join(folder.path, name, `ledger ${name}.db`)
    const store = await openStore(path)
    await setUp(store)
    await postTicket(store)
    await store.close()
    expect(readdirSync(join(folder.path, name))).toEqual([`ledger ${name}.db`])
    const again = await openStore(path)
    await postTicket(again)
    expect(await check(again)).toMatchObject({ whole: true, differences: [], tickets: 2 })
    await again.close()
    // what is wrong is said with the path as it is
    writeFileSync(path, 'no ledger, and long enough to be read as one')
    await expect(openStore(path)).rejects.toThrow(`${path} is not a ledger`)
  })

  // A superuser may write anywhere, so this is done as nobody where the tests run as root.
  it.skipIf(process.platform === 'win32')('in a folder that becomes read-only between two postings: the second is refused in words, and goes on when it may', async () => {
    const at = join(folder.path, 'read-only')
    mkdirSync(at)
    const path = join(at, 'ledger.db')
    const store = await openStore(path)
    await setUp(store)
    await postTicket(store)
    await store.close()
    const program = await bundledProgram(join(import.meta.dirname, 'write-tickets-program.ts'), 'write-tickets')
    const asRoot = process.getuid?.() === 0
    const owner = asRoot ? 65_534 : process.getuid?.() ?? 0
    const before = readFileSync(path)
    const post = (): { readonly status: number | null; readonly stderr: string } => spawnSync(process.execPath, [program, path, '2', '4'], { encoding: 'utf8', ...(asRoot ? { uid: owner, gid: owner } : {}) })
    chmodSync(folder.path, 0o755)
    chownSync(path, owner, owner)
    chownSync(at, owner, owner)
    for (const [folderMode, fileMode] of [[0o555, 0o644], [0o755, 0o444], [0o555, 0o444]] as const) {
      chmodSync(path, fileMode)
      chmodSync(at, folderMode)
      const { status, stderr } = post()
      chmodSync(at, 0o755)
      chmodSync(path, 0o644)
      expect(status).not.toBe(0)
      expect(stderr).toMatch(/LedgerFileFault: The ledger .*read-only\/ledger\.db cannot be (written: the file or its folder is read-only for you|written: the file is read-only for you|opened)/)
      expect(stderr).toMatch(/Get write permission, or copy the ledger to a folder of your own\.|Check that its folder exists and that you may write in it\./)
      expect(readFileSync(path).equals(before)).toBe(true)
    }
    expect(post()).toMatchObject({ status: 0 })
    const again = await openStore(path)
    expect(await check(again)).toMatchObject({ whole: true, tickets: 2 })
    await again.close()
  }, 60_000)

  it('and made by a newer version of this program: it is not opened, and not one byte of it changes', async () => {
    const path = join(folder.path, 'newer.db')
    const store = await openStore(path)
    await setUp(store)
    await store.close()
    const raw = new DatabaseSync(path)
    raw.exec("insert into kysely_migration values ('2999-01-01-later', '2999-01-01')")
    raw.close()
    const before = readFileSync(path)
    const fault: unknown = await openStore(path).catch((error: unknown) => error)
    expect(fault).toBeInstanceOf(LedgerFileFault)
    expect(String(fault)).toMatch(/The ledger .*newer\.db was made by a newer version of this program.*Update the program\./)
    for (const ending of ['-wal', '-shm']) rmSync(path + ending, { force: true })
    expect(readFileSync(path).equals(before)).toBe(true)
    expect(existsSync(`${path}-wal`)).toBe(false)
  })

  it('and brought to a newer version while it is open here: nothing more is posted by this program', async () => {
    const path = join(folder.path, 'brought.db')
    const store = await openStore(path)
    await setUp(store)
    const head = await store.head()
    const newer = new DatabaseSync(path)
    newer.exec("insert into kysely_migration values ('2999-01-01-later', '2999-01-01')")
    newer.close()
    await expect(postTicket(store)).rejects.toThrow(/The ledger .*brought\.db was brought to a newer version of this program while it was open here\. Update this program and open the ledger again; nothing was posted\./)
    expect(await store.head()).toEqual(head)
    await store.close()
  })
})
