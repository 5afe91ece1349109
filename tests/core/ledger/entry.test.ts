import { describe, expect, it } from 'vitest'
import { ENTRY_BODIES, ENTRY_KINDS, entrySchema } from '../../../core/ledger/index.ts'
import { adjustmentPosting, aTicket, chained, inventoryPosting, productPosting, tankPosting, terminalPosting, ticketPosting, voidPosting } from '../../support/postings.ts'

const version = { code: 'T-101', seq: 2, hash: '0'.repeat(64) }
const entries = chained([
  terminalPosting(), tankPosting(), productPosting(), inventoryPosting('1.000', '2026-03-15T06:00:00Z', version, version),
  ticketPosting(aTicket({ number: 'CPT-000001' }), new Uint8Array([1])), voidPosting('CPT-000001'), adjustmentPosting('1.000'),
])

describe('an entry', () => {
  it.each(entries.map((entry) => [entry.kind, entry] as const))('%s is read back as it was posted', (_, entry) => {
    expect(entrySchema.parse(JSON.parse(JSON.stringify(entry)))).toEqual(entry)
  })

  it.each(entries.map((entry) => [entry.kind, entry] as const))('%s with anything more or less is refused', (_, entry) => {
    expect(entrySchema.safeParse({ ...entry, note: 'x' }).success).toBe(false)
    expect(entrySchema.safeParse({ ...entry, body: { ...entry.body, note: 'x' } }).success).toBe(false)
    for (const member of Object.keys(entry.body)) {
      expect(entrySchema.safeParse({ ...entry, body: { ...entry.body, [member]: undefined } }).success, member).toBe(false)
    }
  })

  it('of an unknown kind is refused, and every known kind has a body', () => {
    expect(entrySchema.safeParse({ ...entries[0], kind: 'balance-plugged' }).success).toBe(false)
    expect(ENTRY_KINDS).toEqual(Object.keys(ENTRY_BODIES))
  })
})
