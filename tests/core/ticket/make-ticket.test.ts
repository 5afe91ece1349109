import { describe, expect, it } from 'vitest'
import { ticketSchema } from '../../../core/ticket/index.ts'
import { aTicket } from '../../support/postings.ts'

describe('a ticket', () => {
  const ticket = aTicket({ number: 'CPT-000001' })

  it('is what its schema says', () => {
    expect(ticketSchema.parse(ticket)).toEqual(ticket)
  })

  it('leaves out what is absent, so that it has one canonical text', () => {
    expect(Object.keys(ticket)).not.toContain('replaces')
    expect(Object.values(ticket)).not.toContain(undefined)
    expect(aTicket({ number: 'CPT-000002', replaces: 'CPT-000001' }).replaces).toBe('CPT-000001')
  })

  it('is of the kind of its result', () => {
    expect(aTicket({ number: 'CPT-000001', kind: 'delivery', change: '-50.000' })).toMatchObject({ kind: 'delivery', result: { kind: 'delivery' } })
  })
})
