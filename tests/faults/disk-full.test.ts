import { spawnSync } from 'node:child_process'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { openStore } from '../../main/store/index.ts'
import { aFolder, check, postTicket, setUp } from '../support/ledgers.ts'

const folder = aFolder()
afterAll(folder.remove)

// The shell's limit on the size of files stands for a disk that takes no more; Windows has none.
describe.skipIf(process.platform === 'win32')('a disk that takes no more', () => {
  it('stops the posting, says so, and leaves every ticket that was booked and none by half', async () => {
    const path = join(folder.path, 'ledger.db')
    const store = await openStore(path)
    await setUp(store)
    await store.close()
    const ran = spawnSync('sh', ['-c', `ulimit -f 6000; exec "$0" "$@"`, process.execPath, join(import.meta.dirname, 'write-tickets-program.ts'), path, '100000'], { encoding: 'utf8', timeout: 60_000 })
    expect(ran.status).toBe(1)
    expect(ran.stderr).toContain('LedgerFileFault: The disk that holds the ledger')
    const booked = ran.stdout.split('\n').filter((line) => /^CPT-\d{6} [0-9a-f]{64}$/.test(line))
    expect(booked.length).toBeGreaterThan(0)
    const again = await openStore(path)
    expect(await check(again)).toMatchObject({ whole: true, differences: [], tickets: booked.length })
    for (const line of booked) expect((await again.ticketEntry(line.slice(0, 10)))?.body.document.sha256).toBe(line.slice(11))
    // and once there is room again, posting goes on with the next number
    await postTicket(again)
    expect(await again.ticketCount()).toBe(booked.length + 1)
    await again.close()
  }, 90_000)
})
