import { describe, expect, it } from 'vitest'
import { localTime, readLocalTime } from '../../../renderer/parts/local-time.ts'

// Europe/Lisbon keeps WET (UTC) in winter and WEST (UTC+1) in summer; the clock changes at 01:00 UTC on the last
// Sundays of March and October (Directive 2000/84/EC): 29 March and 25 October in 2026.
const LISBON = 'Europe/Lisbon'

describe('times on the terminal’s clock', () => {
  it.each([
    ['2026-03-14T06:10:00Z', '2026-03-14 06:10'],
    ['2026-07-01T06:10:00Z', '2026-07-01 07:10'],
    ['2026-12-31T23:59:30Z', '2026-12-31 23:59:30'],
  ])('%s is shown as %s and read back', (instant, wall) => {
    expect(localTime(instant, LISBON)).toBe(wall)
    expect(readLocalTime(wall, LISBON)).toEqual({ ok: true, instant })
  })
  it('in the hour that spring leaves out there is no time', () => {
    expect(readLocalTime('2026-03-29 01:30', LISBON)).toEqual({ ok: false, why: 'does-not-exist' })
  })
  it('the hour that autumn shows twice needs its offset', () => {
    expect(readLocalTime('2026-10-25 01:30', LISBON)).toEqual({ ok: false, why: 'happens-twice' })
    expect(readLocalTime('2026-10-25 01:30 +01:00', LISBON)).toEqual({ ok: true, instant: '2026-10-25T00:30:00Z' })
    expect(readLocalTime('2026-10-25 01:30 +00:00', LISBON)).toEqual({ ok: true, instant: '2026-10-25T01:30:00Z' })
  })
  it.each(['', '14.03.2026 06:10', '2026-02-30 06:10', '2026-03-14 24:10', '2026-03-14', '2026-03-14 6:10'])('“%s” is no time', (text) => {
    expect(readLocalTime(text, LISBON)).toEqual({ ok: false, why: 'unreadable' })
  })
  it('what is no instant is shown as it stands', () => {
    expect(localTime('soon', LISBON)).toBe('soon')
  })
})
