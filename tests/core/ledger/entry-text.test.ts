import { createHash } from 'node:crypto'
import canonicalize from 'canonicalize'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canonicalJson, entryText, GENESIS, linkHash } from '../../../core/ledger/index.ts'
import { quickLinkHash } from '../../../main/store/link-hash.ts'

/** Text of all kinds of characters: control, quotes, of two, three and four bytes, and what JSON escapes. */
const odd = fc.oneof(
  fc.string({ unit: 'binary' }), fc.string({ unit: 'grapheme' }),
  fc.constantFrom('', '"', '\\', '\u2028\u2029', '\u0000\u001f\u007f', 'naïve Öl', '油槽', '🛢️', 'é'.normalize('NFD'), '\uFEFF', '\uFFFD', '/'),
)
const hash = fc.string({ unit: fc.constantFrom(...'0123456789abcdef'), minLength: 64, maxLength: 64 })

describe('the text of an entry that is hashed', () => {
  it('is the canonical JSON of the whole entry, whatever stands in it', () => {
    fc.assert(fc.property(fc.nat(), odd, odd, odd, fc.jsonValue({ stringUnit: 'binary' }), fc.option(fc.dictionary(odd, odd)), hash, (seq, kind, at, by, body, origin, previous) => {
      const text = entryText({ seq, kind, at, by, body: canonicalJson(body), origin: origin === null ? null : canonicalJson(origin), previous })
      expect(text).toBe(canonicalize({ seq, kind, at, by, body, previous, ...origin === null ? {} : { origin } }))
    }), { numRuns: 2000 })
  })

  it('names no origin where there is none, so that entries older than origins keep their hash', () => {
    const entry = { seq: 7, kind: 'ticket-voided', at: '2026-03-14T19:00:00Z', by: 'M. Duarte', body: '{}', previous: GENESIS }
    expect(entryText(entry)).toBe(`{"at":"2026-03-14T19:00:00Z","body":{},"by":"M. Duarte","kind":"ticket-voided","previous":"${GENESIS}","seq":7}`)
    expect(entryText({ ...entry, origin: null })).toBe(entryText(entry))
    expect(entryText({ ...entry, origin: '{"station":"Desk 2"}' })).toContain('"kind":"ticket-voided","origin":{"station":"Desk 2"},"previous"')
  })

  it('has no form for half a character (a lone surrogate)', () => {
    for (const half of ['\uD83D', '\uDEE2', 'a\uDC00b']) expect(() => entryText({ seq: 1, kind: 'x', at: half, by: 'y', body: '{}', previous: GENESIS })).toThrow('half a character')
  })

  it('is hashed the same by either way of working SHA-256, as by Node\'s stream of bytes', () => {
    fc.assert(fc.property(hash, fc.oneof(odd, fc.string({ unit: 'binary', minLength: 1000, maxLength: 9000 })), (previous, text) => {
      const expected = createHash('sha256').update(Buffer.from(previous, 'hex')).update(text, 'utf8').digest('hex')
      expect(linkHash(previous, text)).toBe(expected)
      expect(quickLinkHash(previous, text)).toBe(expected)
    }), { numRuns: 500 })
  })
})
