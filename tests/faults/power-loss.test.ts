import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { openStore } from '../../main/store/index.ts'
import { bundledProgram } from '../support/bundled-program.ts'
import { chance } from '../support/chance.ts'
import { aFolder, check, postTicket, setUp } from '../support/ledgers.ts'
import { canWatch, stepsOf, type Step } from './write-order.ts'

const [CUTS, TICKETS, KILOBYTES] = [400, 90, 64]
const SECTOR = 512
const NAMES = ['ledger.db', 'ledger.db-wal'] as const

type Pending = Extract<Step, { what: 'write' | 'truncate' }>

/** What a disk holds: what was synced for certain, and what was asked since, of which any part may have reached it. */
class Disk {
  #certain: Buffer = Buffer.alloc(0)
  #since: Pending[] = []

  constructor(bytes: Buffer) {
    this.#certain = bytes
  }

  ask(step: Pending): void {
    this.#since.push(step)
  }

  sync(): void {
    this.#certain = after(this.#certain, this.#since)
    this.#since = []
  }

  get uncertain(): number {
    return this.#since.length
  }

  /** What may be found when the power went now: every write since the last sync is there, in part by sectors, or not at all. */
  afterPowerCut(random: (below: number) => number): Buffer {
    const luck = random(4)
    return after(this.#certain, this.#since.flatMap((step) => {
      const fate = luck === 0 ? 0 : luck === 1 ? 1 : random(3)
      if (fate === 0) return []
      return fate === 1 || step.what === 'truncate' ? [step] : sectors(step).filter(() => random(2) === 0)
    }))
  }
}

/** A file after writes, in their order. */
function after(file: Buffer, steps: readonly Pending[]): Buffer {
  const bytes = Buffer.alloc(steps.reduce((most, step) => Math.max(most, step.what === 'truncate' ? step.size : step.at + step.bytes.length), file.length))
  file.copy(bytes)
  let { length } = file
  for (const step of steps) {
    if (step.what === 'write') {
      step.bytes.copy(bytes, step.at)
      length = Math.max(length, step.at + step.bytes.length)
    } else {
      bytes.fill(0, step.size)
      length = step.size
    }
  }
  return bytes.subarray(0, length)
}

/** A write in the pieces that a disk writes whole. */
function sectors({ file, at, bytes }: Extract<Step, { what: 'write' }>): readonly Pending[] {
  const pieces: Pending[] = []
  for (let from = at; from < at + bytes.length;) {
    const to = Math.min(at + bytes.length, from - (from % SECTOR) + SECTOR)
    pieces.push({ what: 'write', file, at: from, bytes: bytes.subarray(from - at, to - at) })
    from = to
  }
  return pieces
}

// What a program asks of the disk can be watched where the system allows it, and strace is on Linux.
describe.skipIf(!canWatch())('the power goes while tickets are posted', () => {
  const folder = aFolder()
  afterAll(folder.remove)

  it(`at ${CUTS} moments, with whatever part of the unsynced writes on disk, in whatever order: every acknowledged ticket is there`, async () => {
    const path = join(folder.path, NAMES[0])
    const store = await openStore(path)
    await setUp(store)
    await store.close()
    const disks = new Map<string, Disk>([[NAMES[0], new Disk(readFileSync(path))], [NAMES[1], new Disk(Buffer.alloc(0))]])
    const program = await bundledProgram(join(import.meta.dirname, 'write-tickets-program.ts'), 'write-tickets')
    const steps = stepsOf([program, path, String(TICKETS), String(KILOBYTES)], folder.path)
    expect(steps.filter((step) => step.what === 'said')).toHaveLength(TICKETS)

    const random = chance(20260601)
    const cuts = new Set(Array.from({ length: CUTS }, () => random(steps.length)))
    while (cuts.size < CUTS) cuts.add(random(steps.length))
    const acknowledged = new Map<string, string>()
    let [unsynced, aheadOfSaid, syncs] = [0, 0, 0]
    for (const [i, step] of steps.entries()) {
      const disk = step.what === 'said' ? undefined : disks.get(step.file)
      if (step.what === 'said') acknowledged.set(step.line.slice(0, 10), step.line.slice(11))
      else if (step.what === 'sync') { disk?.sync(); syncs += 1 } else disk?.ask(step)
      if (!cuts.has(i)) continue
      unsynced += [...disks.values()].reduce((sum, { uncertain }) => sum + uncertain, 0)
      const images = NAMES.map((name) => disks.get(name)?.afterPowerCut(random) ?? Buffer.alloc(0))
      aheadOfSaid += await expectAfterwards(images, acknowledged, i % 40 === 0)
    }
    // the log was taken into the ledger's file meanwhile, so those writes were cut too
    expect(steps.some((step) => step.what === 'write' && step.file === NAMES[0])).toBe(true)
    console.log(`${CUTS} power cuts among ${steps.length} writes and ${syncs} syncs of ${TICKETS} postings, ${unsynced} writes uncertain in all: every acknowledged ticket there, ${aheadOfSaid} times one more that was not yet acknowledged`)
  }, 180_000)

  /** The ledger opens, is whole, has every acknowledged ticket, at most one more, and takes the next number. */
  async function expectAfterwards(images: readonly Buffer[], acknowledged: ReadonlyMap<string, string>, thorough: boolean): Promise<number> {
    const found = join(folder.path, 'found.db')
    for (const ending of ['', '-wal', '-shm']) if (existsSync(found + ending)) rmSync(found + ending)
    const [file = Buffer.alloc(0), log = Buffer.alloc(0)] = images
    writeFileSync(found, file)
    if (log.length > 0) writeFileSync(`${found}-wal`, log)
    const store = await openStore(found)
    try {
      expect((await store.verifyChain()).differences).toEqual([])
      const lines = await store.register({ limit: 1000 })
      for (const [number, sha256] of acknowledged) {
        expect((await store.ticketEntry(number))?.body.document.sha256, `${number} was acknowledged`).toBe(sha256)
        expect(await store.document(sha256), number).toBeDefined()
      }
      expect(lines.length - acknowledged.size).toBeGreaterThanOrEqual(0)
      expect(lines.length - acknowledged.size).toBeLessThanOrEqual(1)
      if (thorough) expect(await check(store)).toMatchObject({ whole: true, differences: [] })
      await postTicket(store)
      expect(await store.ticketCount()).toBe(lines.length + 1)
      return lines.length - acknowledged.size
    } finally {
      await store.close()
    }
  }
})
