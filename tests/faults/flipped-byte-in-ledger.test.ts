import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { aFinishedLedger, checkFile, dump } from '../support/evidence.ts'
import { chance } from '../support/chance.ts'
import { aFolder } from '../support/ledgers.ts'

const FLIPS = 400
const CUTS = 300
const SEED = 20260314

describe('a ledger file that is not as it was written', () => {
  const folder = aFolder()
  const altered = join(folder.path, 'altered.db')
  let ledger: Awaited<ReturnType<typeof aFinishedLedger>>
  let sound: Buffer
  let evidence: string
  beforeAll(async () => {
    ledger = await aFinishedLedger()
    sound = readFileSync(ledger.path)
    evidence = dump(ledger.path)
  })
  afterAll(() => { folder.remove(); ledger.remove() })

  /** Puts a file in the place of the last one, with nothing beside it that could mend it. */
  function alter(bytes: Uint8Array): void {
    for (const ending of ['-wal', '-shm']) rmSync(altered + ending, { force: true })
    writeFileSync(altered, bytes)
  }

  /** Flips one bit at each place in a copy of its own: it must be found, or all evidence must be as it was. */
  async function flip(places: readonly number[], random: (below: number) => number): Promise<{ readonly found: number; readonly harmless: number; readonly missed: readonly string[] }> {
    let [found, harmless] = [0, 0]
    const missed: string[] = []
    for (const at of places) {
      const bit = 1 << random(8)
      const bytes = Buffer.from(sound)
      bytes[at] = (bytes[at] ?? 0) ^ bit
      alter(bytes)
      const { whole } = await checkFile(altered)
      if (!whole) found += 1
      else if (dump(altered) === evidence) harmless += 1
      else missed.push(`byte ${at}, bit ${bit}`)
    }
    return { found, harmless, missed }
  }

  it('is whole before', async () => {
    expect(await checkFile(ledger.path)).toMatchObject({ whole: true, differences: [] })
  })

  it(`one bit at ${FLIPS} places anywhere in the file: found, or no evidence was touched`, async () => {
    const random = chance(SEED)
    const { found, harmless, missed } = await flip(Array.from({ length: FLIPS }, () => random(sound.length)), random)
    expect(missed).toEqual([])
    expect(found + harmless).toBe(FLIPS)
    expect(harmless).toBeGreaterThan(0)
    console.log(`${FLIPS} flips anywhere in ${sound.length} bytes: ${found} found, ${harmless} in free space or side tables`)
  }, 120_000)

  it(`one bit at ${FLIPS} places that hold something: nearly all are found, none of evidence is missed`, async () => {
    const random = chance(SEED + 1)
    const written = [...sound.keys()].filter((at) => sound[at] !== 0)
    const { found, harmless, missed } = await flip(Array.from({ length: FLIPS }, () => written[random(written.length)] ?? 0), random)
    expect(missed).toEqual([])
    expect(found).toBeGreaterThan(FLIPS / 2)
    console.log(`${FLIPS} flips among ${written.length} bytes that are not zero: ${found} found, ${harmless} outside evidence`)
  }, 120_000)

  it(`cut off at ${CUTS} lengths: found each time, and nothing of it changed`, async () => {
    const random = chance(SEED + 2)
    const lengths = [0, 1, 15, 16, 99, 100, 4095, 4096, sound.length - 4096, sound.length - 1]
    while (lengths.length < CUTS) lengths.push(random(sound.length))
    for (const length of lengths) {
      alter(sound.subarray(0, length))
      const { whole, differences: [first] } = await checkFile(altered)
      expect(whole, `cut off at ${length}`).toBe(false)
      if (first?.where === 'opening') expect(first.what).toMatch(/Choose another file, or open the last backup\.|keep it aside as it is, and open the last backup\.|open the last backup; else delete/)
      expect(readFileSync(altered).equals(sound.subarray(0, length)), `cut off at ${length}`).toBe(true)
    }
    console.log(`${CUTS} ledgers cut off: all found`)
  }, 60_000)

  it('with a page of zeros anywhere', async () => {
    const page = 4096
    for (let at = 0; at < sound.length; at += page) {
      const bytes = Buffer.from(sound)
      if (bytes.subarray(at, at + page).every((byte) => byte === 0)) continue
      bytes.fill(0, at, at + page)
      alter(bytes)
      const { whole } = await checkFile(altered)
      expect(whole && dump(altered) !== evidence, `page at ${at}`).toBe(false)
    }
  }, 60_000)
})
