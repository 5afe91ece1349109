import { describe, expect, it } from 'vitest'
import { instantKey, isOfKind, versionInForce } from '../../../core/ledger/index.ts'
import { aSmallTank, chained, tankPosting } from '../../support/postings.ts'

describe('the version in force', () => {
  // Four versions of two tanks; the third is a correction with the same date as the second.
  const entries = chained([
    tankPosting(aSmallTank({ name: 'first' }), '2026-01-01T00:00:00Z'),
    tankPosting(aSmallTank({ name: 'second' }), '2026-03-01T00:00:00Z'),
    tankPosting(aSmallTank({ name: 'corrected' }), '2026-03-01T00:00:00.000Z'),
    tankPosting(aSmallTank({ name: 'to come' }), '2026-06-01T00:00:00Z'),
    tankPosting(aSmallTank({ code: 'T-102', name: 'other tank' }), '2026-02-01T00:00:00Z'),
  ]).filter((entry) => isOfKind(entry, 'tank-set'))

  it.each([
    ['2025-12-31T23:59:59Z', undefined],
    ['2026-01-01T00:00:00Z', 'first'],
    ['2026-02-28T23:59:59.999Z', 'first'],
    ['2026-03-01T00:00:00Z', 'corrected'],
    ['2026-05-31T00:00:00Z', 'corrected'],
    ['2026-06-01T00:00:00Z', 'to come'],
  ])('of T-101 at %s is %s', (at, name) => {
    expect(versionInForce(entries, 'T-101', at)?.body.tank.name).toBe(name)
    expect(versionInForce([...entries].reverse(), 'T-101', at)?.body.tank.name).toBe(name)
  })

  it('of a tank that was never set is none', () => {
    expect(versionInForce(entries, 'T-999', '2026-05-31T00:00:00Z')).toBeUndefined()
  })
})

describe('the order of instants', () => {
  it('follows time, not the number of decimals', () => {
    const inTime = ['2026-03-14T06:10:00Z', '2026-03-14T06:10:00.05Z', '2026-03-14T06:10:00.4Z', '2026-03-14T06:10:00.5Z', '2026-03-14T06:10:01Z']
    expect([...inTime].reverse().map(instantKey).sort()).toEqual(inTime.map(instantKey))
    expect(instantKey('2026-03-14T06:10:00.500Z')).toBe(instantKey('2026-03-14T06:10:00.5Z'))
  })

  it.each(['', '2026-03-14', '2026-03-14T06:10:00', '2026-03-14T06:10:00+01:00', '2026-13-14T06:10:00Z', '14/03/2026 06:10'])('“%s” has no place in it', (at) => {
    expect(() => instantKey(at)).toThrow('not an RFC 3339 instant')
  })
})
