import { expect, it } from 'vitest'
import { monthRows, toggled } from '../../../renderer/reconcile/month-rows.ts'
import { aReport } from '../../core/chart/a-report.ts'

it('puts every product above its tanks', () => {
  expect(monthRows(aReport()).map((row) => row.key)).toEqual(['product CRUDE', 'tank T-101 CRUDE', 'tank T-102 CRUDE', 'product GASOIL', 'tank T-201 GASOIL'])
})

it('shows the figures of the report as they stand', () => {
  expect(monthRows(aReport()).map((row) => row.result.lossGain.value)).toEqual(['-0.75', '-20.50', '19.75', '-1.204', '-1.204'])
})

it('folds what is unfolded and unfolds what is folded', () => {
  const open = toggled(new Set(), 'tank T-101')
  expect([...open]).toEqual(['tank T-101'])
  expect([...toggled(open, 'tank T-101')]).toEqual([])
})
