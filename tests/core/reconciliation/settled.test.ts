import { describe, expect, it } from 'vitest'
import { Decimal } from '../../../core/units/index.ts'
import { reconcilePeriod, type BookedMovement, type PeriodRecord, type Reconciliation } from '../../../core/reconciliation/index.ts'
import { anInventory, aPeriod, aTankRecord, aTicket } from './records.ts'

function tankOf(period: PeriodRecord): Reconciliation['tanks'][0] {
  const outcome = reconcilePeriod(period)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings))
  const [tank] = outcome.value.tanks
  if (tank === undefined) throw new Error('no tank')
  return tank
}

/**
 * The first half of March ends on the 15th at 06:00 and was closed by entry 200, with an inventory at 06:10. Entered
 * afterwards: an inventory at 06:01, nearer to the end, and a receipt from 06:02 to 09:00 that nobody knew of.
 */
const MIDDLE = '2026-03-15T06:00:00Z'
const CLOSED_BY = 200
const known = [anInventory('01T06:00', '30000.00'), anInventory('15T06:10', '30000.00')]
const later = [anInventory('15T06:01', '29990.00', { seq: 201 }), anInventory('31T06:00', '40000.00', { seq: 210 })]
const receipt: BookedMovement = aTicket('CPT-000009', '15T06:02', '29990.00', '15T09:00', '40000.00', '10010.00', { seq: 202 })
const tank = aTankRecord({ measurements: [...known, ...later], movements: [receipt] })
const first = (settled: PeriodRecord['settled']): PeriodRecord => aPeriod([tank], { to: MIDDLE, ...settled === undefined ? {} : { settled } })
const second = (settled: PeriodRecord['settled']): PeriodRecord => aPeriod([tank], { from: MIDDLE, ...settled === undefined ? {} : { settled } })

describe('an end that was closed', () => {
  it('keeps its inventory, whatever is entered afterwards nearer to it', () => {
    expect(tankOf(first({ to: CLOSED_BY }))).toMatchObject({ closingAt: '2026-03-15T06:10:00Z', receiptTickets: [], result: { lossGain: { value: '0.00' } } })
    expect(tankOf(second({ from: CLOSED_BY })).openingAt).toBe('2026-03-15T06:10:00Z')
    expect(tankOf(first(undefined)).closingAt).toBe('2026-03-15T06:01:00Z')
  })

  it('counts what was entered afterwards once, in the period that follows', () => {
    // by hand: 40 000.00 measured − (30 000.00 + 10 010.00) = −10.00; what had flowed in by 06:10 shows here
    const after = tankOf(second({ from: CLOSED_BY }))
    expect(after.result).toMatchObject({ opening: { value: '30000.00' }, adjustments: { value: '10010.00' }, measuredClosing: { value: '40000.00' }, lossGain: { value: '-10.00' } })
    expect(after.steps.reduce((sum, { change }) => sum.plus(change.value), new Decimal(0)).toFixed(2)).toBe('-10.00')
  })

  it('a late correction that counts before the inventory of the border counts after it, once', () => {
    const correction: BookedMovement = { ...receipt, seq: 203, kind: 'correction', openedAt: '2026-03-15T06:05:00Z', closedAt: '2026-03-15T06:05:00Z', bookedAt: '2026-03-15T06:05:00Z', concerns: '2026-03-a', openingNsv: '', closingNsv: '', change: '-25.00' }
    const both = aTankRecord({ measurements: [...known, anInventory('31T06:00', '30000.00', { seq: 210 })], movements: [correction] })
    expect(tankOf(aPeriod([both], { to: MIDDLE, settled: { to: CLOSED_BY } })).result.adjustments.value).toBe('0.00')
    expect(tankOf(aPeriod([both], { from: MIDDLE, settled: { from: CLOSED_BY } })).result).toMatchObject({ adjustments: { value: '-25.00' }, lossGain: { value: '25.00' } })
  })
})
