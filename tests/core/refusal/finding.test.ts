import { describe, expect, it } from 'vitest'
import { accepted, allOf, andThen, FINDING_CODES, optional, orRefuse, Refused, refused, wording, type Finding } from '../../../core/refusal/index.ts'

const TOO_HOT: Finding = { code: 'out-of-range', path: 'temperature', value: '302.05 degF', limit: '-58 to 302 degF', clause: 'MPMS-11.1-2004 11.1.3' }
const NO_AMBIENT: Finding = { code: 'missing-value', path: 'temperatures.ambient', value: '', limit: 'the shell needs it', clause: 'MPMS-12.1.1 shell temperature' }

describe('outcomes', () => {
  it('a record of outcomes that all hold is a record of values', () => {
    expect(allOf({ level: accepted(12), water: accepted(3) })).toEqual({ ok: true, value: { level: 12, water: 3 } })
  })
  it('one that does not hold gives every finding, in the order of the record', () => {
    expect(allOf({ hot: refused(TOO_HOT), level: accepted(12), air: refused(NO_AMBIENT) })).toEqual({ ok: false, findings: [TOO_HOT, NO_AMBIENT] })
  })
  it('a step is taken on a value only', () => {
    expect(andThen(accepted(2), (n) => accepted(n * 10))).toEqual(accepted(20))
    expect(andThen(refused(TOO_HOT), () => accepted(1))).toEqual(refused(TOO_HOT))
  })
  it('what is absent stays absent and is not zero', () => {
    expect(optional(undefined, () => accepted(0))).toEqual(accepted(undefined))
  })
})

describe('at the edge', () => {
  it('everything that is wrong is thrown at once', () => {
    expect(() => orRefuse(refused(TOO_HOT, NO_AMBIENT))).toThrow(Refused)
    try { orRefuse(refused(TOO_HOT, NO_AMBIENT)) } catch (error) { expect((error as Refused).findings).toEqual([TOO_HOT, NO_AMBIENT]) }
  })
})

describe('wording', () => {
  it('says where, what and how much is allowed', () => {
    expect(wording(TOO_HOT)).toBe('temperature is 302.05 degF; the limit is -58 to 302 degF (MPMS-11.1-2004 11.1.3).')
  })
  it.each(FINDING_CODES)('%s is one sentence', (code) => {
    expect(wording({ code, path: 'here', value: 'this', limit: 'that', clause: 'HOUSE' })).toMatch(/that[\s\S]*[.]$/)
  })
})
