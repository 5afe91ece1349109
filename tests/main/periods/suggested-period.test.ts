import { describe, expect, it } from 'vitest'
import type { PeriodStanding } from '../../../core/ledger/index.ts'
import { suggestedPeriod } from '../../../main/operations/suggested-period.ts'

/**
 * Offsets of the zones by the IANA time zone database: Lisbon +00:00, in summer +01:00 from 29 March to 25 October 2026
 * (01:00 UTC); New York −05:00, in summer −04:00 from 8 March to 1 November 2026 (02:00 local); Apia was at −10:00 until
 * 29 December 2011 and at +14:00 from the 31st, and had no 30th; Kathmandu +05:45.
 */
describe('the next period by the terminal’s clock', () => {
  it.each([
    ['Europe/Lisbon', '06:00', '2026-09-30T05:10:00Z', { name: '2026-09', from: '2026-09-01T05:00:00Z', to: '2026-10-01T05:00:00Z' }],
    ['Europe/Lisbon', '06:00', '2026-03-14T06:10:00Z', { name: '2026-03', from: '2026-03-01T06:00:00Z', to: '2026-04-01T05:00:00Z' }],
    ['Europe/Lisbon', '06:00', '2026-11-10T06:10:00Z', { name: '2026-11', from: '2026-11-01T06:00:00Z', to: '2026-12-01T06:00:00Z' }],
    // a gauge soon after the gauge hour of the first closes the month before
    ['Europe/Lisbon', '06:00', '2026-10-01T05:20:00Z', { name: '2026-09', from: '2026-09-01T05:00:00Z', to: '2026-10-01T05:00:00Z' }],
    ['Europe/Lisbon', '06:00', '2026-10-01T17:20:00Z', { name: '2026-10', from: '2026-10-01T05:00:00Z', to: '2026-11-01T06:00:00Z' }],
    // 01:30 on 1 November 2026 comes twice in New York: the first is taken, at −04:00
    ['America/New_York', '01:30', '2026-10-20T12:00:00Z', { name: '2026-10', from: '2026-10-01T05:30:00Z', to: '2026-11-01T05:30:00Z' }],
    ['America/New_York', '01:30', '2026-11-20T12:00:00Z', { name: '2026-11', from: '2026-11-01T05:30:00Z', to: '2026-12-01T06:30:00Z' }],
    ['Asia/Kathmandu', '06:00', '2026-01-15T00:00:00Z', { name: '2026-01', from: '2026-01-01T00:15:00Z', to: '2026-02-01T00:15:00Z' }],
    ['UTC', '00:00', '2026-12-31T23:59:59Z', { name: '2026-12', from: '2026-12-01T00:00:00Z', to: '2027-01-01T00:00:00Z' }],
    ['Pacific/Apia', '06:00', '2011-12-20T00:00:00Z', { name: '2011-12', from: '2011-12-01T16:00:00Z', to: '2011-12-31T16:00:00Z' }],
  ])('%s, %s, last gauge %s', (zone, gaugeHour, last, expected) => {
    expect(suggestedPeriod([], { zone, gaugeHour }, { lastGauge: last })).toEqual(expected)
  })

  it.each([
    ['2026-08-12T10:00:00Z', { name: '2026-08', from: '2026-08-01T05:00:00Z', to: '2026-09-01T05:00:00Z' }],
    // what counts at the gauge hour of the first to the second is the last of the month before; a second later it is of the new one
    ['2026-09-01T05:00:00Z', { name: '2026-08', from: '2026-08-01T05:00:00Z', to: '2026-09-01T05:00:00Z' }],
    ['2026-09-01T05:00:01Z', { name: '2026-09', from: '2026-09-01T05:00:00Z', to: '2026-10-01T05:00:00Z' }],
  ])('is that of the first movement, at %s, wherever the last gauge lies', (firstMovement, expected) => {
    expect(suggestedPeriod([], { zone: 'Europe/Lisbon', gaugeHour: '06:00' }, { firstMovement, lastGauge: '2026-09-30T05:10:00Z' })).toEqual(expected)
  })

  const lisbon = { zone: 'Europe/Lisbon', gaugeHour: '06:00' }
  const after = (...periods: readonly (readonly [string, string, string])[]): readonly PeriodStanding[] => periods.map(([name, from, to], i) => ({ name, from, to, seq: i + 1, closedBy: null }))

  it('begins where the last ends, whole month after whole month', () => {
    const two = after(['2026-09', '2026-09-01T05:00:00Z', '2026-10-01T05:00:00Z'])
    expect(suggestedPeriod(two, lisbon, { lastGauge: '' })).toEqual({ name: '2026-10', from: '2026-10-01T05:00:00Z', to: '2026-11-01T06:00:00Z' })
  })

  it('fills the rest of a month that a period ends within, under a name of its own', () => {
    expect(suggestedPeriod(after(['2026-09', '2026-09-01T05:00:00Z', '2026-09-15T05:00:00Z']), lisbon, { lastGauge: '' })).toEqual({ name: '2026-09-2', from: '2026-09-15T05:00:00Z', to: '2026-10-01T05:00:00Z' })
    expect(suggestedPeriod(after(['Third quarter', '2026-07-01T05:00:00Z', '2026-10-01T05:00:00Z']), lisbon, { lastGauge: '' })).toEqual({ name: '2026-10', from: '2026-10-01T05:00:00Z', to: '2026-11-01T06:00:00Z' })
  })
})
