import { describe, expect, it } from 'vitest'
import { apportion, ownersBelowZero, refuseShares } from '../../../core/ledger/index.ts'
import { LARGEST_REMAINDER } from '../../../core/rounding/index.ts'
import { Decimal } from '../../../core/units/index.ts'
import { findingsOf, must } from '../../support/must.ts'
import { lineOf } from '../../support/worksheets.ts'

const share = (party: string, value: string, unit = 'm3') => ({ party, nsv: { value, unit } })
const of = (nsv: string) => ({ nsv: new Decimal(nsv), unit: 'm3' as const })

describe('shares of a movement', () => {
  it('make what was booked, to the last digit', () => {
    expect(refuseShares([share('SHIP', '60.001'), share('HARBOUR', '39.999')], of('100.000'), 'shares')).toEqual([])
    expect(refuseShares([share('SHIP', '-25'), share('HARBOUR', '25.000')], of('0'), 'shares')).toEqual([])
  })

  it.each([
    ['a litre too few', [share('SHIP', '60.000'), share('HARBOUR', '39.999')], [['shares-do-not-add-up', 'shares', '99.999 m3']]],
    ['a litre too many', [share('SHIP', '60.000'), share('HARBOUR', '40.001')], [['shares-do-not-add-up', 'shares', '100.001 m3']]],
    ['one party twice', [share('SHIP', '60.000'), share('SHIP', '40.000')], [['party-named-twice', 'shares.1.party', 'SHIP']]],
    ['another unit', [share('SHIP', '628.98', 'bbl')], [['unit-not-accepted', 'shares.0.nsv', '628.98 bbl']]],
    ['finer than the book', [share('SHIP', '99.9995'), share('HARBOUR', '0.0005')], [['out-of-range', 'shares.0.nsv', '99.9995 m3'], ['out-of-range', 'shares.1.nsv', '0.0005 m3']]],
  ])('%s is refused', (_, shares, expected) => {
    expect(refuseShares(shares, of('100.000'), 'shares').map(({ code, path, value }) => [code, path, value])).toEqual(expected)
  })

  it('says how much is missing', () => {
    expect(refuseShares([share('SHIP', '60.000')], of('100.000'), 'shares')[0]?.limit).toBe('they must make 100.000 m3, so 40.000 m3 is missing')
  })
})

describe('an owner with less than nothing', () => {
  const counted = (party: string, day: string, nsv: string) => ({ party, at: `2026-03-${day}T06:00:00Z`, nsv })
  const shares = [counted('SHIP', '01', '100'), counted('SHIP', '10', '-90'), counted('HARBOUR', '10', '90'), counted('SHIP', '20', '-20'), counted('SHIP', '25', '15')]
  const found = (from: string, more: readonly ReturnType<typeof counted>[] = []) => ownersBelowZero([...shares, ...more], `2026-03-${from}T06:00:00Z`).map(({ party, at, nsv }) => [party, at.slice(8, 10), nsv.toFixed()])

  it('is found at the first instant at which it is so', () => {
    expect(found('01')).toEqual([['SHIP', '20', '-10']])
    expect(found('22')).toEqual([['SHIP', '22', '-10']]) // it stands so on the 22nd
    expect(found('26')).toEqual([])
  })

  it('is found later too, when what was handed over early was needed then', () => {
    expect(found('05', [counted('SHIP', '05', '-5'), counted('HARBOUR', '05', '5')])).toEqual([['SHIP', '20', '-15']])
  })

  it('gives and takes at one instant at once', () => {
    expect(ownersBelowZero([counted('SHIP', '01', '-10'), counted('SHIP', '01', '10')], '2026-03-01T06:00:00Z')).toEqual([])
  })
})

describe('a loss apportioned', () => {
  const bases = [{ party: 'SHIP', base: new Decimal('1200.500') }, { party: 'HARBOUR', base: new Decimal('799.500') }, { party: 'QUAY', base: new Decimal('500.000') }, { party: 'GONE', base: new Decimal(0) }]

  it('by stock: the rule is named, and the shares add up to it', () => {
    const { rule, shares, lines } = must(apportion(of('-3.217'), bases, 'stock'))
    expect(shares.map(({ party, nsv }) => [party, nsv.value])).toEqual([['HARBOUR', '-1.029'], ['QUAY', '-0.643'], ['SHIP', '-1.545']])
    expect(rule).toBe(`in proportion to what each owner has at the end of the period; ${LARGEST_REMAINDER}`)
    expect(lineOf(lines, 'S QUAY')).toMatchObject({ value: '-0.643', unrounded: '-0.6434', rounding: LARGEST_REMAINDER, formula: 'LG × B QUAY / Σ B' })
  })

  it.each([
    ['an owner who has less than nothing', [{ party: 'SHIP', base: new Decimal('-1') }, { party: 'QUAY', base: new Decimal('5') }], ['owner-below-zero']],
    ['nobody who has anything', [{ party: 'SHIP', base: new Decimal(0) }], ['out-of-range']],
    ['nobody at all', [], ['out-of-range']],
  ])('%s is refused', (_, owners, codes) => {
    expect(findingsOf(apportion(of('-3.217'), owners, 'throughput')).map(({ code }) => code)).toEqual(codes)
  })
})
