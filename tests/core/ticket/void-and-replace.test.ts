import { describe, expect, it } from 'vitest'
import { wording } from '../../../core/refusal/index.ts'
import { refuseReplacement, refuseVoid, type Replacement, type TicketStanding } from '../../../core/ticket/index.ts'

const standing: TicketStanding = { number: 'CPT-000007', voided: null, replacedBy: null, kind: 'delivery', tank: 'T-101', openedAt: '2026-03-14T06:10:00Z', closedAt: '2026-03-14T16:40:00Z' }
const voided: TicketStanding = { ...standing, voided: { at: '2026-03-15T09:00:00Z', reason: 'Wrong tank' } }
/** The same delivery, gauged a minute later. */
const again: Replacement = { kind: 'delivery', tank: 'T-101', openedAt: '2026-03-14T06:11:00Z', closedAt: '2026-03-14T16:40:00Z' }
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
    expect(refuseReplacement(voided, 'CPT-000007', again)).toEqual([])
  })

  it.each<[string, Partial<Replacement>]>([
    ['the tank was wrong and the time is the same', { tank: 'T-102' }],
    ['the date was wrong and the tank is the same', { openedAt: '2026-03-15T06:10:00Z', closedAt: '2026-03-15T16:40:00Z' }],
  ])('when %s', (_, change) => {
    expect(refuseReplacement(voided, 'CPT-000007', { ...again, ...change })).toEqual([])
  })

  it.each<[string, Partial<Replacement>]>([
    ['a receipt for a delivery', { kind: 'receipt' }],
    ['another tank at another time', { tank: 'T-102', openedAt: '2026-04-15T06:10:00Z', closedAt: '2026-04-15T16:40:00Z' }],
  ])('but not by %s: that is another movement', (_, change) => {
    expect(refuseReplacement(voided, 'CPT-000007', { ...again, ...change })).toMatchObject([{ code: 'replacement-elsewhere', path: 'ticket.replaces', value: 'CPT-000007' }])
  })

  it.each<[string, TicketStanding | undefined, string, string]>([
    ['there is no such ticket', undefined, 'unknown-ticket', 'there is no ticket'],
    ['it still stands', standing, 'ticket-not-voided', 'is not voided; void it first'],
    ['another replaces it', replaced, 'ticket-already-replaced', 'already replaced by CPT-000008'],
  ])('but not when %s', (_, line, code, words) => {
    const [finding] = refuseReplacement(line, 'CPT-000007', again)
    expect(finding).toMatchObject({ code, path: 'ticket.replaces', value: 'CPT-000007' })
    expect(wording(finding!)).toContain(words)
  })
})
