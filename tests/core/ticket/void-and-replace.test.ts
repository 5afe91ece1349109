import { describe, expect, it } from 'vitest'
import { wording } from '../../../core/refusal/index.ts'
import { refuseReplacement, refuseVoid, type TicketStanding } from '../../../core/ticket/index.ts'

const standing: TicketStanding = { number: 'CPT-000007', voided: null, replacedBy: null }
const voided: TicketStanding = { ...standing, voided: { at: '2026-03-15T09:00:00Z', reason: 'Wrong tank' } }
const replaced: TicketStanding = { ...voided, replacedBy: 'CPT-000008' }

describe('a ticket may be voided', () => {
  it('when it stands and a reason is given', () => {
    expect(refuseVoid(standing, { number: 'CPT-000007', reason: 'Wrong tank' })).toEqual([])
  })

  it('but not when there is no such ticket', () => {
    expect(refuseVoid(undefined, { number: 'CPT-000099', reason: 'Wrong tank' })).toMatchObject([{ code: 'unknown-ticket', path: 'number', value: 'CPT-000099' }])
  })

  it('nor a second time: it says when and why it was voided', () => {
    const [finding, ...others] = refuseVoid(voided, { number: 'CPT-000007', reason: 'Wrong product' })
    expect(others).toEqual([])
    expect(finding).toMatchObject({ code: 'ticket-already-voided', path: 'number', value: 'CPT-000007' })
    expect(wording(finding!)).toContain('2026-03-15T09:00:00Z: Wrong tank')
  })

  it.each(['', '   ', '\n'])('nor without a reason (“%s”)', (reason) => {
    expect(refuseVoid(standing, { number: 'CPT-000007', reason })).toMatchObject([{ code: 'reason-missing', path: 'reason' }])
  })

  it('and everything that is wrong is said at once, where it stands in the input', () => {
    expect(refuseVoid(undefined, { number: 'x', reason: '' }, { number: 'ticket.number', reason: 'ticket.reason' }).map(({ code, path }) => [code, path]))
      .toEqual([['unknown-ticket', 'ticket.number'], ['reason-missing', 'ticket.reason']])
  })
})

describe('a ticket may be replaced', () => {
  it('when it is voided and nothing replaces it', () => {
    expect(refuseReplacement(voided, 'CPT-000007')).toEqual([])
  })

  it.each<[string, TicketStanding | undefined, string, string]>([
    ['there is no such ticket', undefined, 'unknown-ticket', 'there is no ticket'],
    ['it still stands', standing, 'ticket-not-voided', 'is not voided; void it first'],
    ['another replaces it', replaced, 'ticket-already-replaced', 'already replaced by CPT-000008'],
  ])('but not when %s', (_, line, code, words) => {
    const [finding] = refuseReplacement(line, 'CPT-000007')
    expect(finding).toMatchObject({ code, path: 'ticket.replaces', value: 'CPT-000007' })
    expect(wording(finding!)).toContain(words)
  })
})
