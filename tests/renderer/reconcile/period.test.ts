import { describe, expect, it } from 'vitest'
import { lastMonth, monthAfter, monthOf, monthTyped, readPeriod, typedMonth } from '../../../renderer/reconcile/period.ts'

const day = { zone: 'Europe/Lisbon', gaugeHour: '06:00' }
const march = { year: 2026, month: 3 }

describe('months of the measurement calendar', () => {
  it('run from gauge hour to gauge hour on the clock of the terminal: Lisbon is on UTC on 1 March and on UTC+1 on 1 April 2026', () => {
    const read = readPeriod(typedMonth(march, day), day.zone)
    expect(read).toEqual({ ok: true, period: { from: '2026-03-01T06:00:00Z', to: '2026-04-01T05:00:00Z' } })
  })

  it('go over the end of a year', () => {
    expect(monthAfter({ year: 2026, month: 12 })).toEqual({ year: 2027, month: 1 })
    expect(monthAfter({ year: 2026, month: 1 }, -1)).toEqual({ year: 2025, month: 12 })
  })

  it('hold the gauge that closes them', () => {
    expect(monthOf('2026-04-01T05:00:00Z', day)).toEqual(march)
    expect(monthOf('2026-04-01T05:01:00Z', day)).toEqual({ year: 2026, month: 4 })
  })

  it('are known again from what is typed', () => {
    expect(monthTyped(typedMonth(march, day), day)).toEqual(march)
    expect(monthTyped({ from: '2026-03-01 06:00', to: '2026-03-15 06:00' }, day)).toBeUndefined()
    expect(monthTyped({ from: '2026-03-02 06:00', to: '2026-04-02 06:00' }, day)).toBeUndefined()
  })
})

describe('the month that is shown first', () => {
  it('is that of the last gauge', () => {
    expect(lastMonth([{ at: '2026-03-20T10:00:00Z' }, { at: '2026-02-01T10:00:00Z' }], day)).toEqual(march)
  })

  it('is the one before as long as there is no more than closing gauges taken a little late', () => {
    expect(lastMonth([{ at: '2026-04-01T05:16:00Z' }, { at: '2026-03-20T10:00:00Z' }], day)).toEqual(march)
  })

  it('is none without gauges', () => {
    expect(lastMonth([], day)).toBeUndefined()
  })
})

it('says of each end what is wrong with it: Lisbon leaves out 01:30 on 29 March 2026', () => {
  expect(readPeriod({ from: '2026-03-29 01:30', to: 'soon' }, day.zone)).toEqual({ ok: false, from: { ok: false, why: 'does-not-exist' }, to: { ok: false, why: 'unreadable' } })
})
