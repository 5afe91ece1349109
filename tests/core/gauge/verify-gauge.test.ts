import { describe, expect, it } from 'vitest'
import { refuseUnverified, standingOf, verifyGauge, type GaugeVerification, type StandingVerification } from '../../../core/gauge/index.ts'
import { findingsOf, must } from '../../support/must.ts'
import { aTank } from '../../support/tanks.ts'
import { aVerification } from '../../support/verifications.ts'

const at = (automatic: string, innage: string) => ({ automatic, hand: { innage } })
const found = (parts: Partial<GaugeVerification>) => must(verifyGauge(aVerification(parts), aTank()))

describe('an automatic gauge against hand gauges', () => {
  it('is verified when every difference is within the limit, which belongs to it', () => {
    const result = found({ asFound: [at('2.004 m', '2.000 m'), at('6.000 m', '6.004 m'), at('11.000 m', '11.000 m')] })
    expect(result.verdict).toBe('within')
    expect(result.asFound.points.map(({ difference, limit, within }) => [difference.value, limit.value, within])).toEqual([['4', '4', true], ['-4', '4', true], ['0', '4', true]])
    expect(result.exceptions).toEqual([])
  })

  it('is not when one level is off by a tenth of a millimetre more, and that is printed', () => {
    const result = found({ asFound: [at('2.000 m', '2.000 m'), at('6.0041 m', '6.000 m'), at('11.000 m', '11.000 m')] })
    expect([result.verdict, result.asFound.points.map(({ within }) => within)]).toEqual(['outside', [true, false, true]])
    expect(result.exceptions.map(({ code, path, value, limit }) => [code, path, value, limit])).toEqual([['gauge-out-of-limits', 'verification.asFound.1', '4.1 mm as found', '4 mm']])
  })

  it.each([['6 ft 7 3/16 in', 'within'], ['6 ft 7 1/4 in', 'outside']])('against 6 ft 7 in by hand, %s is %s 3/16 in', (automatic, verdict) => {
    const points = [at(automatic, '6 ft 7 in'), at('19 ft 0 in', '19 ft 0 in'), at('36 ft 0 in', '36 ft 0 in')]
    expect(found({ asFound: points }).verdict).toBe(verdict)
  })

  it('that was out and was set counts as it was left', () => {
    const off = [at('2.010 m', '2.000 m'), at('6.010 m', '6.000 m'), at('11.010 m', '11.000 m')]
    const right = [at('2.001 m', '2.000 m'), at('6.000 m', '6.000 m'), at('10.999 m', '11.000 m')]
    const result = found({ asFound: off, asLeft: right })
    expect([result.verdict, result.asFound.within, result.asLeft?.within]).toEqual(['within', false, true])
    expect(result.exceptions.map(({ code }) => code)).toEqual(['gauge-out-of-limits', 'gauge-out-of-limits', 'gauge-out-of-limits'])
    expect(found({ asFound: right, asLeft: off }).verdict).toBe('outside')
  })

  it('may be out for custody and within for inventory: 25 mm', () => {
    const points = [at('2.020 m', '2.000 m'), at('6.025 m', '6.000 m'), at('11.000 m', '11.000 m')]
    expect([found({ asFound: points }).verdict, found({ asFound: points, use: 'inventory' }).verdict]).toEqual(['outside', 'within'])
  })

  it('OIML R 85 class 2 allows 0.04 % where that is more than 3 mm: 4.4 mm at 11 m', () => {
    const points = [at('2.003 m', '2.000 m'), at('6.003 m', '6.000 m'), at('11.0044 m', '11.000 m')]
    expect(found({ asFound: points, rule: 'OIML-R85 class 2' }).verdict).toBe('within')
    expect(found({ asFound: [at('2.0031 m', '2.000 m'), ...points.slice(1)], rule: 'OIML-R85 class 2' }).verdict).toBe('outside')
  })

  it('hand gauges are those of the tape: repeated readings by their rule, an ullage from the reference gauge height', () => {
    const hand = { by: 'ullage' as const, readings: [{ read: '9.250 m' }, { read: '9.251 m' }, { read: '9.250 m' }], observedReferenceHeight: '13.250 m' }
    const { asFound } = found({ occasion: 'subsequent', asFound: [{ automatic: '4.002 m', hand }] })
    expect(asFound.points[0]).toMatchObject({ hand: { value: '4000', unit: 'mm' }, difference: { value: '2' } })
  })

  it('levels that leave a third of the tank out are printed: 13.250 m in thirds of 4.417 m', () => {
    const close = found({ asFound: [at('5 m', '5 m'), at('6 m', '6 m'), at('11 m', '11 m')] })
    expect(close.exceptions.map(({ code, limit }) => [code, limit])).toEqual([['verification-levels-close', 'one in each third of 13250 mm']])
  })
})

describe('a custody ticket on an automatic gauge', () => {
  const snapshot = { tank: 'T-101', at: '2026-03-14T06:10:00Z', instrument: { kind: 'automatic' as const, id: 'LT-101', status: 'ok' as const } }
  const standing = (parts: Partial<GaugeVerification>, seq = 1): StandingVerification => {
    const verification = aVerification(parts)
    return standingOf(seq, verification, must(verifyGauge(verification, aTank())))
  }
  const codes = (...all: readonly StandingVerification[]) => refuseUnverified(snapshot, all, 'ticket.opening').map(({ code }) => code)
  const off = [at('2.000 m', '2.000 m'), at('6.007 m', '6.000 m'), at('11.000 m', '11.000 m')]

  it('needs a verification within limits before its gauge', () => {
    expect(codes()).toEqual(['gauge-not-verified'])
    expect(codes(standing({}))).toEqual([])
    expect(codes(standing({ at: '2026-03-14T06:10:01Z' }))).toEqual(['gauge-not-verified'])
    expect(codes(standing({ gauge: 'LT-102' }))).toEqual(['gauge-not-verified'])
    expect(codes(standing({ use: 'inventory' }))).toEqual(['gauge-not-verified'])
    expect(codes(standing({ asFound: off }))).toEqual(['gauge-out-of-limits'])
  })

  it('the last verification counts, and of two at one moment the one that was entered later', () => {
    expect(codes(standing({ asFound: off }, 1), standing({ at: '2026-03-02T08:00:00Z' }, 2))).toEqual([])
    expect(codes(standing({ at: '2026-03-02T08:00:00Z' }, 2), standing({ at: '2026-03-03T08:00:00Z', asFound: off }, 3))).toEqual(['gauge-out-of-limits'])
    expect(codes(standing({ asFound: off }, 2), standing({}, 1))).toEqual(['gauge-out-of-limits'])
  })

  it('is refused once the next verification is due', () => {
    expect(codes(standing({ nextDue: '2026-03-14T06:10:00Z' }))).toEqual([])
    expect(codes(standing({ nextDue: '2026-03-14T06:09:59Z' }))).toEqual(['gauge-not-verified'])
  })

  it('a tape in a hand needs none', () => {
    expect(refuseUnverified({ tank: 'T-101', at: snapshot.at }, [], 'ticket.opening')).toEqual([])
  })
})

describe('a verification that cannot be used', () => {
  const three = aVerification().asFound
  it.each<readonly [string, Partial<GaugeVerification>, string]>([
    ['of another tank', { tank: 'T-999' }, 'tank-differs verification.tank'],
    ['at two levels only', { asFound: three.slice(0, 2) }, 'missing-value verification.asFound'],
    ['as left at two levels only', { asLeft: three.slice(0, 2) }, 'missing-value verification.asLeft'],
    ['at no moment', { at: 'this morning' }, 'unreadable-value verification.at'],
    ['due before it was made', { nextDue: '2026-02-01T00:00:00Z' }, 'out-of-range verification.nextDue'],
    ['due at no moment', { nextDue: 'in spring' }, 'unreadable-value verification.nextDue'],
    ['with an automatic level below datum', { asFound: [at('-1 mm', '0 mm'), ...three.slice(1)] }, 'out-of-range verification.asFound.0.automatic'],
    ['with an automatic level above the reference point', { asFound: [at('13.251 m', '13.250 m'), ...three.slice(1)] }, 'out-of-range verification.asFound.0.automatic'],
    ['with a hand gauge that cannot be read', { asFound: [at('2.000 m', 'two metres'), ...three.slice(1)] }, 'unreadable-value verification.asFound.0.hand.innage'],
    ['with hand readings that differ', { asFound: [{ automatic: '2.000 m', hand: { by: 'innage', readings: [{ read: '2.000 m' }, { read: '2.009 m' }, { read: '2.000 m' }] } }, ...three.slice(1)] }, 'readings-differ verification.asFound.0.hand.readings'],
    ['with an ullage beyond the reference gauge height', { asFound: [{ automatic: '2.000 m', hand: { ullage: '13.300 m' } }, ...three.slice(1)] }, 'ullage-beyond-reference-height verification.asFound.0.hand.ullage'],
    ['with a tape that nobody standardised', { asFound: [{ ...at('2.000 m', '2.000 m'), tape: { temperature: '20 degC' } }, ...three.slice(1)] }, 'missing-value verification.asFound.0.tape.standardAt'],
  ])('%s', (_says, parts, answer) => {
    expect(findingsOf(verifyGauge(aVerification(parts), aTank())).map(({ code, path }) => `${code} ${path}`)).toEqual([answer])
  })
})
