import { spawnSync } from 'node:child_process'
import { mkdirSync, rmSync, statfsSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { LedgerFileFault, openStore } from '../../main/store/index.ts'
import { chance } from '../support/chance.ts'
import { aFolder, check, postTicket, setUp } from '../support/ledgers.ts'

const folder = aFolder()
afterAll(folder.remove)

const FULL = 40

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

/** A small disk in memory, where one may be mounted: by root, on Linux. */
function aSmallDisk(): { readonly path: string; readonly remove: () => void } | undefined {
  const path = join(folder.path, 'disk')
  mkdirSync(path)
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=32m', 'tmpfs', path]).status !== 0) return undefined
  return { path, remove: () => { spawnSync('umount', [path]) } }
}

const disk = process.platform === 'linux' ? aSmallDisk() : undefined
afterAll(() => { disk?.remove() })

describe.skipIf(disk === undefined)('a small disk that other files fill up', () => {
  it(`${FULL} times, with another amount left each time: each posting is whole or absent, and goes on when there is room`, async () => {
    const at = disk?.path ?? ''
    const [path, ballast] = [join(at, 'ledger.db'), join(at, 'ballast')]
    const random = chance(20260801)
    let [refused, posted] = [0, 0]
    let store = await openStore(path)
    await setUp(store)
    for (let round = 0; round < FULL; round += 1) {
      // so many pages are left; now and then none at all, now and then before the ledger is opened
      fillUp(at, ballast, random(3) === 0 ? random(4) : random(60))
      if (round % 4 === 3) {
        await store.close()
        const opened = await openStore(path).catch((error: unknown) => error)
        if (opened instanceof Error) {
          expect(opened.message).toMatch(/The disk that holds the ledger .* (is full\. Free some space and try again; nothing was half posted|reports an error)/)
          rmSync(ballast)
          store = await openStore(path)
        } else store = opened as typeof store
      }
      for (;;) {
        const fault: unknown = await postTicket(store).then(() => undefined, (error: unknown) => error)
        if (fault !== undefined) {
          expect(fault).toBeInstanceOf(LedgerFileFault)
          expect(String(fault)).toMatch(/The disk that holds the ledger .* is full\. Free some space and try again; nothing was half posted\./)
          refused += 1
          break
        }
        posted += 1
      }
      // what is there is whole, with the disk still full
      expect((await store.verifyChain()).differences).toEqual([])
      expect(await store.ticketCount()).toBe(posted)
      rmSync(ballast, { force: true })
      await postTicket(store)
      posted += 1
      expect(await store.ticketCount()).toBe(posted)
    }
    expect(await check(store)).toMatchObject({ whole: true, differences: [], tickets: posted })
    await store.close()
    const again = await openStore(path)
    expect(await check(again)).toMatchObject({ whole: true, differences: [], tickets: posted })
    await again.close()
    expect(refused).toBe(FULL)
    console.log(`${FULL} times full: ${refused} postings refused, ${posted} booked, all whole`)
  }, 120_000)
})

/** Fills a disk with a file but for so many pages. */
function fillUp(at: string, ballast: string, pages: number): void {
  writeFileSync(ballast, '')
  const { bavail, bsize } = statfsSync(at)
  const size = Math.max(0, bavail - pages) * bsize
  try { writeFileSync(ballast, Buffer.alloc(size)) } catch { truncateSync(ballast, 0) }
}
