import { describe, expect, it } from 'vitest'
import { NO_FILTER, readFilter } from '../../../renderer/register/register-filter.ts'

describe('the filter of the register', () => {
  it('lets everything through when nothing is typed', () => {
    expect(readFilter(NO_FILTER, 'Europe/Lisbon')).toEqual({ input: {}, wrong: [] })
  })

  it('takes whole days on the clock of the terminal: midnight in Lisbon is 23:00 UTC the day before in summer', () => {
    expect(readFilter({ ...NO_FILTER, fromDay: '2026-07-01', toDay: '2026-07-02' }, 'Europe/Lisbon').input).toEqual({ from: '2026-06-30T23:00:00Z', to: '2026-07-02T23:00:00Z' })
  })

  it('begins a day whose midnight the clock leaves out with the hour after it (Santiago, 6 September 2026, IANA tzdata)', () => {
    expect(readFilter({ ...NO_FILTER, fromDay: '2026-09-06' }, 'America/Santiago').input).toEqual({ from: '2026-09-06T04:00:00Z' })
  })

  it('names days that are none, and filters by the rest', () => {
    expect(readFilter({ ...NO_FILTER, search: ' 0007 ', tank: 'T-101', product: 'CRUDE', fromDay: '2026-02-30', toDay: '14.3.2026' }, 'UTC')).toEqual({
      input: { search: '0007', tank: 'T-101', product: 'CRUDE' }, wrong: ['fromDay', 'toDay'],
    })
  })
})
