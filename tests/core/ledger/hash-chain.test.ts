import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { checkLink, GENESIS, type Entry } from '../../../core/ledger/index.ts'
import { adjustmentPosting, chained, terminalPosting, voidPosting } from '../../support/postings.ts'

/** The hash as its definition reads, worked with Node's own SHA-256 and a text written by hand. */
function workedByHand(previous: string, canonical: string): string {
  return createHash('sha256').update(Buffer.from(previous, 'hex')).update(canonical, 'utf8').digest('hex')
}

describe('the chain', () => {
  const [first, second, third] = chained([terminalPosting(), voidPosting('CPT-000001', 'Wrong tank'), adjustmentPosting('-1.500')]) as [Entry, Entry, Entry]

  it('begins with 64 zeros', () => {
    expect(GENESIS).toMatch(/^0{64}$/)
    expect(first).toMatchObject({ seq: 1, previous: GENESIS })
    expect(first.hash).toBe(workedByHand(GENESIS, `{"at":"2026-03-14T19:00:00Z","body":{"terminal":{"code":"CPT","gaugeHour":"06:00","name":"Calder Point Terminal","zone":"Europe/Lisbon"}},"by":"M. Duarte","kind":"terminal-set","previous":"${GENESIS}","seq":1}`))
  })

  it('goes on from the hash of the entry before', () => {
    expect(second).toMatchObject({ seq: 2, previous: first.hash })
    expect(second.hash).toBe(workedByHand(first.hash, `{"at":"2026-03-14T19:00:00Z","body":{"number":"CPT-000001","reason":"Wrong tank"},"by":"M. Duarte","kind":"ticket-voided","previous":"${first.hash}","seq":2}`))
  })

  it('holds at every link', () => {
    expect(checkLink(first, undefined)).toEqual([])
    expect(checkLink(second, first)).toEqual([])
    expect(checkLink(third, second)).toEqual([])
  })

  it('says which part of which entry does not fit', () => {
    expect(checkLink({ ...second, at: '2026-03-14T19:00:01Z' }, first)).toMatchObject([{ seq: 2, part: 'hash', stands: second.hash }])
    expect(checkLink({ ...second, by: 'A. Reis' }, first)).toMatchObject([{ seq: 2, part: 'hash' }])
    expect(checkLink({ ...second, hash: third.hash }, first)).toMatchObject([{ seq: 2, part: 'hash', stands: third.hash, expected: second.hash }])
    expect(checkLink({ ...second, previous: GENESIS }, first)).toMatchObject([{ seq: 2, part: 'previous', stands: GENESIS, expected: first.hash }, { seq: 2, part: 'hash' }])
    expect(checkLink({ ...second, previous: 'no hash' }, first).map((difference) => difference.part)).toEqual(['previous', 'hash'])
    expect(checkLink(third, first)).toMatchObject([{ seq: 3, part: 'seq', stands: '3', expected: '2' }, { seq: 3, part: 'previous' }])
    expect(checkLink(second, undefined)).toMatchObject([{ part: 'seq', expected: '1' }, { part: 'previous', expected: GENESIS }])
  })
})
