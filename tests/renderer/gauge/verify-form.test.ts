import { describe, expect, it } from 'vitest'
import { gaugeVerificationSchema, verifyGauge } from '../../../core/gauge/index.ts'
import { fieldOfVerification, nameOfVerifyField, placeVerification } from '../../../renderer/gauge/place-verification.ts'
import { usualUnits } from '../../../renderer/gauge/usual-units.ts'
import { verifiedGauges } from '../../../renderer/gauge/verified-gauges.ts'
import { keptVerification, newVerification, openVerification, verificationFrom, verifyFormSchema, verifyReducer, verifySheetReducer, type VerifyAction, type VerifyForm } from '../../../renderer/gauge/verify-form.ts'
import { must } from '../../support/must.ts'
import { PRODUCTS, TANKS } from '../a-yard.ts'

const LISBON = 'Europe/Lisbon'
const units = usualUnits(TANKS[0], PRODUCTS[0])
const after = (...actions: readonly VerifyAction[]): VerifyForm => actions.reduce(verifyReducer, newVerification('T-101'))
const write = (at: number, part: 'automatic' | 'hand.0' | 'hand.1' | 'hand.2' | 'referenceHeight', value: string): VerifyAction => ({ do: 'write-line', stage: 'asFound', at, part, value })
const header: readonly VerifyAction[] = [{ do: 'write', field: 'gauge', value: 'LT-101' }, { do: 'write', field: 'at', value: '2026-03-01 08:00' }, { do: 'write', field: 'by', value: 'A. Reis' }]
const levels: readonly VerifyAction[] = ['2000', '6000', '11000'].flatMap((level, at) => [write(at, 'automatic', level), write(at, 'hand.0', level)])

describe('a verification being written', () => {
  it('begins with three empty levels and nothing that was not written', () => {
    const { asFound, asLeft, ...rest } = newVerification('T-101')
    expect([asFound.length, asLeft.length]).toEqual([3, 0])
    expect(rest).toEqual({ tank: 'T-101', gauge: '', at: '', by: '', nextDue: '', remarks: '', use: 'custody', rule: 'MPMS-3.1B', occasion: 'initial', handBy: 'innage' })
  })

  it('becomes what the operation takes, bare numbers in the unit of the table', () => {
    const { verification } = verificationFrom(after(...header, ...levels), LISBON, units)
    expect(gaugeVerificationSchema.parse(verification)).toEqual({
      tank: 'T-101', gauge: 'LT-101', at: '2026-03-01T08:00:00Z', by: 'A. Reis', use: 'custody', rule: 'MPMS-3.1B', occasion: 'initial',
      asFound: ['2000 mm', '6000 mm', '11000 mm'].map((level) => ({ automatic: level, hand: { innage: level } })),
    })
    expect(must(verifyGauge(verification, TANKS[0]!)).verdict).toBe('within')
  })

  it('hands on repeated readings, an ullage with its reference height, the gauge as left and the next date', () => {
    const form = after(...header, ...levels, { do: 'write', field: 'handBy', value: 'ullage' }, write(0, 'hand.0', '11250'), write(0, 'hand.1', '11.251 m'), write(0, 'hand.2', '11250'), write(0, 'referenceHeight', '13250'),
      { do: 'write', field: 'nextDue', value: '2026-04-01 08:00' }, { do: 'was-set', set: true }, { do: 'write-line', stage: 'asLeft', at: 1, part: 'automatic', value: '6001' })
    const { verification } = verificationFrom(form, LISBON, units)
    expect(verification.asFound[0]).toEqual({ automatic: '2000 mm', hand: { by: 'ullage', readings: [{ read: '11250 mm' }, { read: '11.251 m' }, { read: '11250 mm' }], observedReferenceHeight: '13250 mm' } })
    expect([verification.asLeft?.length, verification.asLeft?.[1]?.automatic, verification.nextDue]).toEqual([3, '6001 mm', '2026-04-01T07:00:00Z'])
  })

  it('takes only what is offered where one of a few is chosen', () => {
    expect(after({ do: 'write', field: 'rule', value: 'mine' }).rule).toBe('MPMS-3.1B')
    expect(after({ do: 'write', field: 'rule', value: 'OIML-R85 class 2' }).rule).toBe('OIML-R85 class 2')
  })

  it('levels come and go', () => {
    expect(after({ do: 'add-level', stage: 'asFound' }).asFound).toHaveLength(4)
    expect(after(write(0, 'automatic', 'first'), { do: 'drop-level', stage: 'asFound', at: 0 }).asFound.map(({ automatic }) => automatic)).toEqual(['', ''])
    expect(after({ do: 'was-set', set: true }, { do: 'was-set', set: false }).asLeft).toEqual([])
  })
})

describe('a verification that is kept', () => {
  it('comes back from its draft as it was, as left and all', () => {
    const form = after(...header, ...levels, { do: 'was-set', set: true })
    expect(verifyFormSchema.parse(JSON.parse(JSON.stringify(form)))).toEqual(form)
    expect(verifyFormSchema.safeParse({ ...form, rule: 'mine' }).success).toBe(false)
  })

  it('goes back and forth; letters written in one field in a row are one step', () => {
    const typed = [write(0, 'automatic', '2'), write(0, 'automatic', '20'), write(0, 'hand.0', '20'), { do: 'was-set', set: true } as const].reduce(verifySheetReducer, openVerification(newVerification('T-101')))
    expect(typed.past).toHaveLength(3)
    const back = verifySheetReducer(verifySheetReducer(typed, { do: 'undo' }), { do: 'undo' })
    expect([back.present.asFound[0]?.automatic, back.present.asFound[0]?.hand[0], back.present.asLeft]).toEqual(['20', '', []])
    expect(verifySheetReducer(verifySheetReducer(back, { do: 'redo' }), { do: 'redo' }).present).toEqual(typed.present)
  })

  it('is found again by its tank, whatever other drafts there are', () => {
    const drafts = [
      { id: 'a', kind: 'transfer', body: newVerification('T-101') }, { id: 'b', kind: 'verification', body: newVerification('T-102') },
      { id: 'c', kind: 'verification', body: { tank: 'T-101' } }, { id: 'd', kind: 'verification', body: newVerification('T-101') },
    ]
    expect([keptVerification(drafts, 'T-101'), keptVerification(drafts, 'T-301')]).toEqual(['d', undefined])
  })
})

describe('what is wrong with a verification', () => {
  it.each([
    ['verification.asFound.1.hand.innage', 'verify.asFound.1.hand.0', 'As found, level 2: hand reading 1'],
    ['verification.asLeft.0.hand.readings.2.read', 'verify.asLeft.0.hand.2', 'As left, level 1: hand reading 3'],
    ['verification.asFound.0.hand.observedReferenceHeight', 'verify.asFound.0.referenceHeight', 'As found, level 1: ref. height seen'],
    ['verification.asFound.2.automatic', 'verify.asFound.2.automatic', 'As found, level 3: automatic gauge'],
    ['verification.asFound', 'verify.asFound.0.automatic', 'As found, level 1: automatic gauge'],
    ['verification.nextDue', 'verify.nextDue', 'Next due'],
  ])('%s stands at %s', (path, field, name) => {
    expect([fieldOfVerification(path), nameOfVerifyField(field)]).toEqual([field, name])
  })

  it('what is still empty is missing, not wrong', () => {
    const form = newVerification('T-101')
    const read = verificationFrom(form, LISBON, units)
    const outcome = verifyGauge(read.verification, TANKS[0]!)
    const placed = placeVerification(outcome.ok ? [] : outcome.findings, form, read)
    expect(placed.findings).toEqual([])
    expect(placed.missing).toEqual(expect.arrayContaining(['verify.gauge', 'verify.at', 'verify.by', 'verify.asFound.0.automatic', 'verify.asFound.0.hand.0']))
  })

  it('is said with the name of its field', () => {
    const form = after(...header, ...levels, write(1, 'automatic', 'six'), { do: 'write', field: 'nextDue', value: 'soon' })
    const read = verificationFrom(form, LISBON, units)
    const outcome = verifyGauge(read.verification, TANKS[0]!)
    const { findings } = placeVerification(outcome.ok ? [] : outcome.findings, form, read)
    expect(findings.map(({ field }) => field)).toEqual(['verify.nextDue', 'verify.asFound.1.automatic'])
    expect(findings[1]?.message).toMatch(/^As found, level 2: automatic gauge: “six” cannot be read/)
  })
})

describe('the gauges of a tank in words', () => {
  const one = { seq: 4, tank: 'T-101', gauge: 'LT-101', at: '2026-03-01T08:00:00Z', use: 'custody', rule: 'MPMS-3.1B', verdict: 'outside', greatest: '9 mm', limit: '4 mm', nextDue: null } as const
  it('the last verification of each', () => {
    expect(verifiedGauges([], 'T-101', LISBON)).toBe('none was verified')
    expect(verifiedGauges([one, { ...one, seq: 5, at: '2026-03-02T08:00:00Z', verdict: 'within', greatest: '1 mm' }, { ...one, tank: 'T-102' }], 'T-101', LISBON)).toBe('LT-101: within limits for custody, 2026-03-02 08:00, at most 1 mm')
  })
})
