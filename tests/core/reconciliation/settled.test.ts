import { describe, expect, it } from 'vitest'
import { Decimal } from '../../../core/units/index.ts'
import { reconcilePeriod, underEachName, type BookedMovement, type PeriodRecord, type Reconciliation } from '../../../core/reconciliation/index.ts'
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

/**
 * By hand, in barrels. The 15th closes with the inventory of 06:40, for one of 03:00 lies farther from 06:00. In between a
 * receipt of 500 from 06:05 to 06:30 was booked: it counts in the first half, as far as its inventories go. Then by 31 March
 * 200 went out. 30 000.00 + 500.00 = 30 500.00 at 06:40; 30 500.00 − 200.00 = 30 300.00 at the end.
 */
const inBetween = aTicket('CPT-000020', '15T06:05', '30000.00', '15T06:30', '30500.00', '500.00', { seq: 150 })
const delivery = aTicket('CPT-000021', '20T08:00', '30500.00', '20T18:00', '30300.00', '-200.00', { seq: 205 })
const inventories = [anInventory('01T06:00', '30000.00'), anInventory('15T03:00', '30000.00'), anInventory('15T06:40', '30500.00', { seq: 151 }), anInventory('31T06:00', '30300.00', { seq: 206 })]
/** Both halves; the second is closed by entry 300 where that is said. */
const halves = (movements: readonly BookedMovement[], closedBy?: number): readonly [Reconciliation['tanks'][0], Reconciliation['tanks'][0]] => {
  const record = aTankRecord({ measurements: inventories, movements })
  return [tankOf(aPeriod([record], { to: MIDDLE, settled: { to: CLOSED_BY } })), tankOf(aPeriod([record], { from: MIDDLE, settled: { from: CLOSED_BY, to: closedBy } }))]
}
const lossGains = (both: readonly Reconciliation['tanks'][0][]): readonly string[] => both.map(({ result }) => result.lossGain.value)

describe('a movement between the end of a closed period and the inventory that closed it', () => {
  it('counts where that inventory is, and the two halves lose nothing', () => {
    const both = halves([inBetween, delivery])
    expect(both[0]).toMatchObject({ closingAt: '2026-03-15T06:40:00Z', receiptTickets: ['CPT-000020'], result: { receipts: { value: '500.00' }, measuredClosing: { value: '30500.00' } } })
    expect(both[1]).toMatchObject({ openingAt: '2026-03-15T06:40:00Z', deliveryTickets: ['CPT-000021'], result: { opening: { value: '30500.00' }, adjustments: { value: '0.00' } } })
    expect(lossGains(both)).toEqual(['0.00', '0.00'])
  })

  it('voided later, stays in the closed half and is taken back in the open one, once', () => {
    // the book now says that nothing came in: 30 300.00 − (30 500.00 − 500.00 − 200.00) = +500.00 in the second half
    const [was] = halves([inBetween, delivery])
    const both = halves([{ ...inBetween, voidedBy: 210 }, delivery])
    expect(both[0]).toEqual(was)
    expect(both[1].result).toMatchObject({ opening: { value: '30500.00' }, receipts: { value: '0.00' }, adjustments: { value: '-500.00' } })
    expect(both[1].receiptTickets).toEqual([])
    expect(lossGains(both)).toEqual(['0.00', '500.00'])
    // over both, as if it had never been: 30 300.00 − (30 000.00 − 200.00) = 500.00
    expect(both[1].steps.reduce((sum, { change }) => sum.plus(change.value), new Decimal(0)).toFixed(2)).toBe('500.00')
  })

  it('replaced by what was really moved, brings the difference into the open half', () => {
    // 480 and not 500: −500.00 + 480.00 = −20.00, and 30 300.00 − (30 500.00 − 20.00 − 200.00) = +20.00
    const replacement = aTicket('CPT-000022', '15T06:05', '30000.00', '15T06:30', '30480.00', '480.00', { seq: 211 })
    const both = halves([{ ...inBetween, voidedBy: 210 }, replacement, delivery])
    expect(both[1].result.adjustments.value).toBe('-20.00')
    expect(lossGains(both)).toEqual(['0.00', '20.00'])
  })

  it('voided before the closing, is in neither half', () => {
    expect(lossGains(halves([{ ...inBetween, voidedBy: 199 }, delivery]))).toEqual(['500.00', '0.00'])
  })

  it('entered and voided since, changes neither', () => {
    const passing = aTicket('CPT-000023', '15T06:31', '30500.00', '15T06:39', '30600.00', '100.00', { seq: 212 })
    expect(lossGains(halves([inBetween, { ...passing, voidedBy: 213 }, delivery]))).toEqual(['0.00', '0.00'])
  })

  it('voided between the two closings, stays taken back in the second half, whatever comes after that', () => {
    const voided = { ...inBetween, voidedBy: 210 }
    const closed = halves([voided, delivery], 300)
    expect(lossGains(closed)).toEqual(['0.00', '500.00'])
    const later = aTicket('CPT-000024', '31T06:00', '30300.00', '31T08:00', '30400.00', '100.00', { seq: 301 })
    expect(halves([voided, { ...delivery, voidedBy: 302 }, later], 300)).toEqual(closed)
  })
})

describe('what was under way at a closed end', () => {
  /** Nearer to the end than 03:00 lies the inventory of 06:40, during a receipt from 06:30 to 08:30: so 03:00 closed it. */
  const underWay = aTicket('CPT-000030', '15T06:30', '30000.00', '15T08:30', '31000.00', '1000.00', { seq: 150 })
  it('holds its inventory back although it was voided later; the next begins where this one ended', () => {
    const both = halves([{ ...underWay, voidedBy: 210 }])
    expect(both.map(({ openingAt, closingAt }) => [openingAt, closingAt])).toEqual([['2026-03-01T06:00:00Z', '2026-03-15T03:00:00Z'], ['2026-03-15T03:00:00Z', '2026-03-31T06:00:00Z']])
    // the receipt never counted in the first half, and does not in the second: 30 300.00 − 30 000.00
    expect(lossGains(both)).toEqual(['0.00', '300.00'])
    expect(both[0]).toEqual(halves([underWay])[0])
    // still standing: 30 300.00 − (30 000.00 + 1 000.00)
    expect(lossGains(halves([underWay]))).toEqual(['0.00', '-700.00'])
  })
})

describe('a stock movement, leg by leg', () => {
  it('voided later is taken back in the open half under the sign of each tank', () => {
    const leg = (change: string, voidedBy?: number): BookedMovement => ({ ...inBetween, kind: 'tank-to-tank', number: '', change, ...voidedBy === undefined ? {} : { voidedBy } })
    expect(halves([leg('500.00')])[0].result.transfersIn.value).toBe('500.00')
    const back = halves([leg('-500.00', 210)])
    expect(back[0].result).toMatchObject({ transfersOut: { value: '500.00' }, lossGain: { value: '1000.00' } })
    expect(back[1]).toMatchObject({ transfers: [], result: { transfersOut: { value: '0.00' }, adjustments: { value: '500.00' } } })
  })
})

describe('an inventory', () => {
  it('entered later for the very instant of the one that closed the half is not its opening either', () => {
    const measurements = [...inventories, anInventory('15T06:40', '30490.00', { seq: 207 })]
    const after = tankOf(aPeriod([aTankRecord({ measurements, movements: [inBetween, delivery] })], { from: MIDDLE, settled: { from: CLOSED_BY } }))
    expect(after.result).toMatchObject({ opening: { value: '30500.00' }, lossGain: { value: '0.00' } })
    expect(after.steps.filter(({ change }) => change.value !== '0.00')).toEqual([])
  })

  it('entered later before the first period does not open it any more, once that is closed', () => {
    const measurements = [anInventory('01T05:00', '30000.00', { seq: 11 }), ...inventories.slice(1), anInventory('01T06:00', '29000.00', { seq: 207 })]
    const first = aPeriod([aTankRecord({ measurements, movements: [inBetween] })], { to: MIDDLE, settled: { to: CLOSED_BY } })
    expect(tankOf(first)).toMatchObject({ openingAt: '2026-03-01T05:00:00Z', result: { opening: { value: '30000.00' }, lossGain: { value: '0.00' } } })
  })
})

describe('a regrade at the very border of two periods', () => {
  /** At 06:00 of the 15th, measured under both names at that instant: 30 000.00 of gasoline became naphtha. */
  const named = (code: string) => ({ product: code, productName: code, volumeUnit: 'bbl' }) as const
  const leg = (product: string, openingNsv: string, closingNsv: string, change: string): BookedMovement => ({ seq: 120, kind: 'regrade', number: '', product, openedAt: MIDDLE, closedAt: MIDDLE, openingNsv, closingNsv, change, unit: 'bbl' })
  const record = aTankRecord({
    product: 'NAPH', productName: 'NAPH',
    measurements: [anInventory('01T06:00', '30000.00'), anInventory('15T06:00', '30000.00', { seq: 119 }), anInventory('15T06:00', '30000.00', { seq: 121, product: 'NAPH' }), anInventory('31T06:00', '29990.00', { seq: 210, product: 'NAPH' })],
    movements: [leg('GASO', '30000.00', '0', '-30000.00'), leg('NAPH', '0', '30000.00', '30000.00')],
  })
  const limits: PeriodRecord['limits'] = new Map(['GASO', 'NAPH'].map((product) => [product, { percent: '0.20 %', fixed: '0 bbl', base: 'deliveries', source: 'storage contract, clause 9' } as const]))
  const reported = (from: string, to: string, settled: PeriodRecord['settled']): readonly unknown[] => {
    const outcome = reconcilePeriod(aPeriod([...underEachName(record, { from, to, closedBy: settled?.to }, named)], { from, to, limits, ...settled === undefined ? {} : { settled } }))
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings))
    expect(outcome.value.missing).toEqual([])
    return outcome.value.tanks.map(({ product, result }) => [product, result.opening.value, result.transfersIn.value, result.transfersOut.value, result.measuredClosing.value, result.lossGain.value])
  }

  it('counts in the one that ends there, and the next goes on under the new name', () => {
    // gasoline: 30 000.00 − 30 000.00 = 0; naphtha: 0 + 30 000.00; then 29 990.00 − 30 000.00 = −10.00
    expect(reported('2026-03-01T06:00:00Z', MIDDLE, { to: CLOSED_BY })).toEqual([['NAPH', '0.00', '30000.00', '0.00', '30000.00', '0.00'], ['GASO', '30000.00', '0.00', '30000.00', '0.00', '0.00']])
    expect(reported(MIDDLE, '2026-03-31T06:00:00Z', { from: CLOSED_BY })).toEqual([['NAPH', '30000.00', '0.00', '0.00', '29990.00', '-10.00']])
  })
})
