import { describe, expect, it } from 'vitest'
import { instantOfLocal } from '../../../main/exchange/local-time.ts'

const read = (text: string, zone: string): string => { const outcome = instantOfLocal(text, zone, 'at'); return outcome.ok ? outcome.value : outcome.findings.map((finding) => finding.code).join() }

// Rules of the zones as in the IANA time zone database: Lisbon is UTC+1 in summer until 2026-10-25 02:00, Kathmandu UTC+05:45,
// New York put its clock forward on 2026-03-08 at 02:00 and back on 2026-11-01 at 02:00.
describe('a time of the clock on the wall', () => {
  it.each([
    ['2026-09-01 06:00', 'Europe/Lisbon', '2026-09-01T05:00:00Z'],
    ['2026-11-01 06:00', 'Europe/Lisbon', '2026-11-01T06:00:00Z'],
    ['2026-10-25 00:59', 'Europe/Lisbon', '2026-10-24T23:59:00Z'],
    ['2026-10-25 02:00', 'Europe/Lisbon', '2026-10-25T02:00:00Z'],
    ['2026-01-01 00:10', 'Asia/Kathmandu', '2025-12-31T18:25:00Z'],
    ['2026-03-08 03:00', 'America/New_York', '2026-03-08T07:00:00Z'],
    ['2026-09-01T06:00', 'UTC', '2026-09-01T06:00:00Z'],
  ])('%s in %s is %s', (text, zone, instant) => { expect(read(text, zone)).toBe(instant) })

  it('is refused where the clock skipped it or showed it twice', () => {
    expect(read('2026-03-08 02:30', 'America/New_York')).toBe('unreadable-value')
    expect(read('2026-11-01 01:30', 'America/New_York')).toBe('unreadable-value')
    expect(read('2026-10-25 01:30', 'Europe/Lisbon')).toBe('unreadable-value')
  })

  it.each(['2026-09-31 06:00', '2026-09-01 24:00', '2026-09-01 06:60', '1 September', '2026-09-01', '2026-09-01 6:00'])('%s is refused', (text) => {
    expect(read(text, 'Europe/Lisbon')).toBe('unreadable-value')
  })
})
