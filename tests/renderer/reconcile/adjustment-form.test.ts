import { expect, it } from 'vitest'
import { adjustmentComplete, EMPTY_ADJUSTMENT, readAdjustment } from '../../../renderer/reconcile/adjustment-form.ts'

const form = { tank: 'T-101', effectiveAt: '2026-07-14 06:10', nsv: '-12.34 bbl', reason: 'Line displaced to slops' }

it('hands over what was typed, with the time as an instant', () => {
  expect(readAdjustment(form, 'M. Duarte', 'Europe/Lisbon')).toEqual({ ok: true, input: { ...form, effectiveAt: '2026-07-14T05:10:00Z', approvedBy: 'M. Duarte' } })
})

it('says what is wrong with the time', () => {
  expect(readAdjustment({ ...form, effectiveAt: 'yesterday' }, 'M. Duarte', 'Europe/Lisbon')).toEqual({ ok: false, time: { ok: false, why: 'unreadable' } })
})

it('is complete when every field holds something', () => {
  expect(adjustmentComplete(form, 'M. Duarte')).toBe(true)
  expect(adjustmentComplete(form, ' ')).toBe(false)
  expect(adjustmentComplete(EMPTY_ADJUSTMENT, 'M. Duarte')).toBe(false)
})
