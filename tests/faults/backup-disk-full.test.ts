import { spawnSync } from 'node:child_process'
import { mkdirSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { aBulkyLedger, aSmallDisk, backUp, backupsAt } from '../support/backups.ts'
import { checkFile } from '../support/evidence.ts'
import { aFolder, check, postTicket } from '../support/ledgers.ts'
import { openStore } from '../../main/store/index.ts'
import { aWorld } from '../support/world.ts'

const folder = aFolder()
const small = join(folder.path, 'small disk')
const disk = aSmallDisk(small, 2048)
afterAll(() => {
  disk?.remove()
  folder.remove()
})

// A disk of its own where one may be mounted; the shell's limit on the size of files elsewhere. Windows has neither.
describe.runIf(disk !== undefined)('a backup disk that is full', () => {
  it('at each of its parts: no backup, nothing left, the message says which disk; with room again it is made', async () => {
    const ledger = join(folder.path, 'smaller.db')
    await aBulkyLedger(ledger, 4, 100)
    const store = await openStore(ledger)
    const first = await backUp(store, small, () => '2026-11-25T08:00:00Z')
    await store.close()
    await aBulkyLedger(join(folder.path, 'larger.db'), 30, 100)
    const world = await aWorld({ copyOf: join(folder.path, 'larger.db') })
    expect(await world.call('backup-now', { folder: small })).toEqual({ fault: { message: `The disk of the folder ${small} is full. Free some space there, or choose another folder; nothing unfinished was left there, and what was there is as it was.` } })
    expect(await world.call('export-ledger', { to: join(small, 'all.jsonl') })).toEqual({ fault: { message: expect.stringContaining(`The disk of the folder ${small} is full`) } })
    expect(await world.call('restore-backup', { backup: join(folder.path, 'larger.db'), to: join(small, 'new', 'ledger.db') })).toEqual({ fault: { message: expect.stringContaining('is full') } })
    expect(backupsAt(small)).toEqual([first.name])
    expect(readdirSync(small).toSorted()).toEqual([first.name, 'new', 'verified-backups.jsonl'].toSorted())
    expect(readdirSync(join(small, 'new'))).toEqual([])
    expect((await checkFile(first.path)).whole).toBe(true)
    // posting went on all the while
    await postTicket(world.context.store!)
    disk?.remount('size=16m')
    expect((await world.ask('backup-now', { folder: small })).tickets).toBe(31)
    await world.close()
  }, 60_000)
})

describe.skipIf(process.platform === 'win32')('a file that may not grow', () => {
  it('leaves no backup, says so, and the ledger is as it was', async () => {
    const ledger = join(folder.path, 'limited.db')
    await aBulkyLedger(ledger, 12, 100)
    const to = join(folder.path, 'limited')
    mkdirSync(to)
    const ran = spawnSync('sh', ['-c', 'ulimit -f 1000; exec "$0" "$@"', process.execPath, join(import.meta.dirname, 'back-up-program.ts'), ledger, to], { encoding: 'utf8', timeout: 60_000 })
    expect(ran.stdout).toContain(`LedgerFileFault: The disk of the folder ${to}`)
    expect(readdirSync(to)).toEqual([])
    const store = await openStore(ledger)
    expect(await check(store)).toMatchObject({ whole: true, tickets: 12 })
    expect((await backUp(store, to)).tickets).toBe(12)
    await store.close()
  }, 60_000)
})
