import { describe, expect, it } from 'vitest'
import { reasonsToKeep } from '../../../main/backup/retention.ts'

/** Backups at 02:00 and 14:00 of every day from 2026-09-01 on; the names are their instants. */
function twiceADay(days: number): readonly { readonly name: string; readonly at: string; readonly counts: boolean }[] {
  return Array.from({ length: days * 2 }, (_, i) => {
    const at = new Date(Date.UTC(2026, 8, 1, 2 + 12 * i)).toISOString().replace('.000Z', 'Z')
    return { name: at, at, counts: true }
  })
}

function kept(days: number, keep: Parameters<typeof reasonsToKeep>[1]): readonly string[] {
  return [...reasonsToKeep(twiceADay(days), keep)].filter(([, reasons]) => reasons.length > 0).map(([name]) => name.slice(0, 13))
}

// written out by hand from a calendar: 2026-09-01 is a Tuesday, 2026-10-10 a Saturday
describe('what is kept', () => {
  it('the newest so many', () => {
    expect(kept(40, { last: 3, days: 0, weeks: 0, months: 0 })).toEqual(['2026-10-10T14', '2026-10-10T02', '2026-10-09T14'])
  })

  it('the newest of so many days', () => {
    expect(kept(40, { last: 1, days: 3, weeks: 0, months: 0 })).toEqual(['2026-10-10T14', '2026-10-09T14', '2026-10-08T14'])
  })

  it('the newest of so many weeks, which begin on Monday', () => {
    expect(kept(40, { last: 1, days: 0, weeks: 3, months: 0 })).toEqual(['2026-10-10T14', '2026-10-04T14', '2026-09-27T14'])
  })

  it('the newest of so many months', () => {
    expect(kept(40, { last: 1, days: 0, weeks: 0, months: 12 })).toEqual(['2026-10-10T14', '2026-09-30T14'])
  })

  it('whatever any of them keeps, each with its reasons', () => {
    const reasons = reasonsToKeep(twiceADay(40), { last: 2, days: 2, weeks: 2, months: 2 })
    expect([...reasons].filter(([, why]) => why.length > 0)).toEqual([
      ['2026-10-10T14:00:00Z', ['newest', 'last', 'day', 'week', 'month']],
      ['2026-10-10T02:00:00Z', ['last']],
      ['2026-10-09T14:00:00Z', ['day']],
      ['2026-10-04T14:00:00Z', ['week']],
      ['2026-09-30T14:00:00Z', ['month']],
    ])
  })

  it('a pause of a year retires nothing: only days that have a backup count', () => {
    const backups = ['2025-09-01T02:00:00Z', '2025-09-02T02:00:00Z', '2026-09-02T02:00:00Z'].map((at) => ({ name: at, at, counts: true }))
    expect([...reasonsToKeep(backups, { last: 1, days: 3, weeks: 0, months: 0 }).values()].every((why) => why.length > 0)).toBe(true)
  })

  it('a backup that was not verified takes nobody\'s place and is not judged', () => {
    const backups = [{ name: 'b', at: '2026-09-02T02:00:00Z', counts: false }, { name: 'a', at: '2026-09-01T02:00:00Z', counts: true }]
    expect([...reasonsToKeep(backups, { last: 1, days: 0, weeks: 0, months: 0 })]).toEqual([['a', ['newest', 'last']]])
  })
})
