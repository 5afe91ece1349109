import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { LedgerFileFault, openStore, type Head } from '../../main/store/index.ts'
import { chance } from '../support/chance.ts'
import { aFolder, check, nextTicket, postTicket, setUp } from '../support/ledgers.ts'
import { ticketPosting } from '../support/postings.ts'

/** Few enough that SQLite does not take the log into the file by itself meanwhile, as it does from 1000 pages on. */
const TICKETS = 20
const [CUTS, FLIPS, TORN, SHARED] = [300, 400, 300, 60]
const SECTOR = 512
const FRAME = 24 + 4096
const HEADER = 32

/** How far the log reached when a posting had returned, and what was the head then. */
interface Moment { readonly end: number; readonly head: Head; readonly tickets: number }

describe('the write-ahead log beside a ledger, not as it was written', () => {
  const folder = aFolder()
  const copy = join(folder.path, 'copy.db')
  const moments: Moment[] = []
  let [file, log, shared, older] = [Buffer.alloc(0), Buffer.alloc(0), Buffer.alloc(0), Buffer.alloc(0)]

  beforeAll(async () => {
    const path = join(folder.path, 'ledger.db')
    const store = await openStore(path)
    await setUp(store)
    // an older log first, so that what stands behind the end is not empty
    for (let i = 0; i < TICKETS; i += 1) await post(store, 30_000)
    const other = new DatabaseSync(path)
    other.exec('pragma wal_checkpoint(restart)')
    other.close()
    older = readFileSync(`${path}-wal`)
    const before = readFileSync(path)
    const end = async (): Promise<void> => { moments.push({ end: endOf(readFileSync(`${path}-wal`)), head: await store.head(), tickets: await store.ticketCount() }) }
    moments.push({ end: 0, head: await store.head(), tickets: await store.ticketCount() })
    for (let i = 0; i < TICKETS; i += 1) {
      await post(store, 500 + (i * 7919) % 8_000)
      await end()
    }
    ;[file, log, shared] = [readFileSync(path), readFileSync(`${path}-wal`), readFileSync(`${path}-shm`)]
    await store.close()
    // nothing of the log was taken into the file meanwhile, and it is no longer than the older one was
    expect(file.equals(before)).toBe(true)
    expect(log.length).toBe(older.length)
    expect(moments.map(({ tickets }) => tickets)).toEqual(Array.from({ length: TICKETS + 1 }, (_, i) => TICKETS + i))
  })
  afterAll(folder.remove)

  /** Puts the ledger with another log in the place of the last one. */
  function put(bytes: Uint8Array, sharedBytes?: Uint8Array): void {
    rmSync(`${copy}-shm`, { force: true })
    writeFileSync(copy, file)
    writeFileSync(`${copy}-wal`, bytes)
    if (sharedBytes !== undefined) writeFileSync(`${copy}-shm`, sharedBytes)
  }

  /** Opens the copy, expects it to end at one of the moments, whole, and posts the next number. Gives which moment. */
  async function expectMoment(thorough: boolean): Promise<number> {
    const store = await openStore(copy)
    try {
      const head = await store.head()
      const which = moments.findIndex((moment) => moment.head.hash === head.hash)
      expect(which, `the head is ${head.seq} ${head.hash}`).toBeGreaterThanOrEqual(0)
      expect(await store.verifyChain()).toMatchObject({ entries: head.seq, head, differences: [] })
      expect(await store.ticketCount()).toBe(moments[which]?.tickets)
      if (thorough) expect(await check(store)).toMatchObject({ whole: true, differences: [] })
      await postTicket(store)
      expect(await store.ticketCount()).toBe((moments[which]?.tickets ?? 0) + 1)
      return which
    } finally {
      await store.close()
    }
  }

  const lastBefore = (length: number): number => moments.findLastIndex((moment) => moment.end <= length)

  it(`cut off at ${CUTS} lengths: every posting that lies whole in it is there, and none by half`, async () => {
    const random = chance(20260501)
    const end = moments.at(-1)?.end ?? 0
    const lengths = [0, 31, 32, ...moments.flatMap((moment) => [moment.end - 1, moment.end, moment.end + 1]).filter((length) => length > 32)]
    while (lengths.length < CUTS) lengths.push(random(end))
    for (const [i, length] of lengths.entries()) {
      put(log.subarray(0, length))
      expect(await expectMoment(i % 25 === 0), `cut off at ${length}`).toBe(lastBefore(length))
    }
    console.log(`${lengths.length} logs cut off: each ended with the last posting that lay whole in it`)
  }, 120_000)

  it(`one bit flipped at ${FLIPS} places: found, or it was in the last posting, which is then left out whole`, async () => {
    const random = chance(20260502)
    const end = moments.at(-1)?.end ?? 0
    const from = moments.at(-2)?.end ?? 0
    let [found, leftOut] = [0, 0]
    for (let i = 0; i < FLIPS; i += 1) {
      const place = random(8) === 0 ? from + random(end - from) : random(end)
      const bytes = Buffer.from(log)
      bytes[place] = (bytes[place] ?? 0) ^ (1 << random(8))
      put(bytes)
      const fault: unknown = await expectMoment(i % 50 === 0).catch((error: unknown) => error)
      if (fault instanceof LedgerFileFault) {
        expect(fault.message).toMatch(/is damaged: .* in .*copy\.db-wal cannot be read\. Do not go on with it: keep both files aside as they are, and open the last backup\./)
        // refusing it changed nothing
        expect(readFileSync(copy).equals(file) && readFileSync(`${copy}-wal`).equals(bytes)).toBe(true)
        found += 1
      } else {
        expect(fault, `byte ${place}`).toBe(moments.length - 2)
        expect(place, 'a posting was lost without a word').toBeGreaterThanOrEqual(from)
        leftOut += 1
      }
    }
    expect(found).toBeGreaterThan(FLIPS / 2)
    console.log(`${FLIPS} flips in the log: ${found} found, ${leftOut} in the last posting, left out whole as after a power cut`)
  }, 120_000)

  it(`with the last posting written in part and out of order, ${TORN} times: as before that posting, or with all of it`, async () => {
    const random = chance(20260503)
    let whole = 0
    for (let i = 0; i < TORN; i += 1) {
      const at = 1 + random(moments.length - 1)
      const [from, to] = [moments[at - 1]?.end ?? 0, moments[at]?.end ?? 0]
      // what comes after was never written: there is what the older log left
      const bytes = Buffer.concat([log.subarray(0, to), older.subarray(to)])
      const odds = [1, 8, 40, 400][random(4)] ?? 1
      for (let sector = from - (from % SECTOR); sector < to; sector += SECTOR) {
        // the header of a log begun anew is synced before any frame follows it
        const [first, end] = [Math.max(sector, from, HEADER), Math.min(sector + SECTOR, to)]
        if (random(odds + 1) === 0) older.copy(bytes, first, first, end)
      }
      put(bytes)
      const which = await expectMoment(i % 50 === 0)
      if (which === at) whole += 1
      else expect(which).toBe(at - 1)
    }
    console.log(`${TORN} postings torn by sectors of ${SECTOR} bytes: ${whole} had lost nothing and were taken, ${TORN - whole} left out whole, none by half`)
  }, 120_000)

  it(`one bit flipped at ${SHARED} places of the index of the log: it is made anew`, async () => {
    const random = chance(20260504)
    for (let i = 0; i < SHARED; i += 1) {
      const bytes = Buffer.from(shared)
      const place = random(i % 2 === 0 ? 136 : bytes.length)
      bytes[place] = (bytes[place] ?? 0) ^ (1 << random(8))
      put(log, bytes)
      expect(await expectMoment(i % 20 === 0), `byte ${place}`).toBe(moments.length - 1)
    }
    console.log(`${SHARED} flips in the index of the log: nothing lost`)
  }, 60_000)
})

async function post(store: Awaited<ReturnType<typeof openStore>>, size: number): Promise<void> {
  const { ticket, head } = await nextTicket(store)
  const document = new TextEncoder().encode(`%PDF-1.7 ${ticket.number} `.repeat(Math.ceil(size / 20)))
  const posting = ticketPosting(ticket, document)
  await store.append([posting], { expectedHead: head, documents: [{ sha256: posting.body.document.sha256, name: `${ticket.number}.pdf`, bytes: document }] })
}

/** Where the frames of the current log end: those behind have the salts of an older one. @see https://sqlite.org/fileformat.html 4.1 */
function endOf(bytes: Buffer): number {
  let end = 32
  while (end + FRAME <= bytes.length && bytes.compare(bytes, 16, 24, end + 8, end + 16) === 0) end += FRAME
  return end
}
