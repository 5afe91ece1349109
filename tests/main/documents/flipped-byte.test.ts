import { beforeAll, describe, expect, it } from 'vitest'
import { Refused } from '../../../core/refusal/index.ts'
import { verifyDocument } from '../../../main/operations/handlers/verify-document.ts'
import { makeDesk } from '../../../main/operations/desk/desk.ts'
import { makeKeyRing } from '../../../main/signing/index.ts'
import { aPair, aSignedTicket, TEST_CORE } from '../../support/ticket.ts'

let signed: Uint8Array
let text: string
beforeAll(async () => {
  signed = await aSignedTicket(await aPair())
  text = Buffer.from(signed).toString('latin1')
})

const context = { store: null, place: null, desk: makeDesk('bench', 2 ** 10), keys: makeKeyRing(), now: () => '2026-03-15T08:00:00Z', software: { name: 'Dipledger', version: '0.1.0', core: TEST_CORE }, log: () => undefined } as const

/** What the check says of a file: valid, not valid, or refused; anything else thrown fails the test. */
async function saidOf(pdf: Uint8Array): Promise<'valid' | 'not valid' | 'refused'> {
  try {
    const { valid } = await verifyDocument({ file: Buffer.from(pdf).toString('base64') }, context, { progress: () => undefined, signal: new AbortController().signal })
    return valid ? 'valid' : 'not valid'
  } catch (error) {
    if (error instanceof Refused) return 'refused'
    throw error
  }
}

/** Every place at which a file with one byte changed was still called valid. */
async function stillValid(places: readonly number[], change: number): Promise<readonly number[]> {
  const unseen: number[] = []
  for (const place of places) {
    const altered = new Uint8Array(signed)
    altered[place] = (altered[place] ?? 0) ^ change
    if (await saidOf(altered) === 'valid') unseen.push(place)
  }
  return unseen
}

/** Places in a stretch of the file, evenly spread. */
function spread(from: number, to: number, count: number): readonly number[] {
  const wanted = Math.min(count, to - from)
  return Array.from({ length: wanted }, (_, i) => from + Math.floor((i * (to - from)) / wanted))
}

/** The stretch of the n-th match of a pattern. */
function stretch(pattern: RegExp, n = 0): readonly [number, number] {
  const found = [...text.matchAll(pattern)].at(n)
  if (!found) throw new Error(`${String(pattern)} is not in the file`)
  return [found.index, found.index + found[0].length]
}

describe('one byte changed', () => {
  it('in the file left alone: it is valid to begin with', async () => {
    expect(await saidOf(signed)).toBe('valid')
  })

  it('anywhere: 400 places spread over the whole file', async () => {
    expect(await stillValid(spread(0, signed.length, 400), 0x01)).toEqual([])
  }, 240_000)

  const REGIONS: readonly (readonly [string, () => readonly [number, number], number])[] = [
    ['in the head', () => [0, 20], 20],
    ['in the data inside', () => stretch(/\/Type \/EmbeddedFile[\s\S]*?endstream/g, 0), 40],
    ['in the drawing of a page', () => stretch(/\/Length \d+\n\/Filter \/FlateDecode\n>>\nstream[\s\S]*?endstream/g, 2), 40],
    ['in the first cross-reference table', () => stretch(/xref\n0 [\s\S]*?trailer/g), 40],
    ['in the last cross-reference table', () => stretch(/xref\n(?!0)[\s\S]*?trailer/g, -1), 60],
    ['in the first byte range', () => stretch(/\/ByteRange \[[^\]]*\]/g), 58],
    ['in the last byte range', () => stretch(/\/ByteRange \[[^\]]*\]/g, -1), 58],
    ['in the first signature', () => stretch(/\/Contents <[0-9a-f]{1600}/g), 40],
    ['in the last signature, every digit of its head', () => { const [start] = stretch(/\/Contents <[0-9a-f]{400}/g, -1); return [start, start + 120] }, 120],
    ['in the last signature, further on', () => stretch(/\/Contents <[0-9a-f]{2400}/g, -1), 120],
    ['in the zeros that fill the last signature', () => { const [, end] = stretch(/\/Contents <[0-9a-f]+/g, -1); return [end - 12_000, end] }, 30],
    ['at the end of the last signature', () => { const [, end] = stretch(/\/Contents <[0-9a-f]+/g, -1); return [end - 4, end + 12] }, 16],
    ['in the last trailer', () => stretch(/trailer\n(?![\s\S]*trailer)[\s\S]*$/g), 200],
  ]

  it.each(REGIONS)('%s', async (_, region, count) => {
    const [from, to] = region()
    const places = spread(from, to, count)
    expect(places.length).toBeGreaterThan(10)
    expect(await stillValid(places, 0x01)).toEqual([])
    expect(await stillValid(places, 0x20)).toEqual([])
  }, 240_000)
})

describe('a file cut short or grown', () => {
  it('is never valid, wherever it is cut', async () => {
    const said = new Set<string>()
    for (const length of spread(0, signed.length, 60)) said.add(await saidOf(signed.subarray(0, length)))
    for (const less of [1, 2, 6, 7]) said.add(await saidOf(signed.subarray(0, signed.length - less)))
    expect(said).not.toContain('valid')
  })

  it('is never valid with anything behind it', async () => {
    for (const tail of ['\n', ' ', '\0', '%%EOF\n', 'startxref\n0\n%%EOF\n']) expect(await saidOf(Buffer.concat([signed, Buffer.from(tail)]))).not.toBe('valid')
  })
})
