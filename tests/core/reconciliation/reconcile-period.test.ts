import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { reconcilePeriod, type PeriodRecord, type Reconciliation } from '../../../core/reconciliation/index.ts'
import { Decimal } from '../../../core/units/index.ts'
import { anAdjustment, anInventory, aPeriod, aTankRecord, aTicket } from './records.ts'

function report(period: PeriodRecord): Reconciliation {
  const outcome = reconcilePeriod(period)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings))
  return outcome.value
}
const steps = (period: PeriodRecord): readonly string[][] => (report(period).tanks[0]?.steps ?? []).map((step) => [step.fromWhat, step.toWhat, step.change.value, step.cumulative.value])
const total = (period: PeriodRecord): string | undefined => report(period).tanks[0]?.result.lossGain.value

describe('a month of one tank', () => {
  it('compares the measured closing with the book, and shows where the difference arose', () => {
    const month = report(aPeriod([aTankRecord()]))
    expect(month.tanks[0]?.result).toMatchObject({
      opening: { value: '30000.00' }, receipts: { value: '10000.00' }, deliveries: { value: '8000.00' }, bookClosing: { value: '32000.00' },
      measuredClosing: { value: '31980.00' }, lossGain: { value: '-20.00' }, percent: '-0.250', limit: { value: '16.00' }, verdict: 'loss-outside-limit',
    })
    expect(steps(aPeriod([aTankRecord()]))).toEqual([
      ['inventory', 'opening of CPT-000001', '-5.00', '-5.00'],
      ['closing of CPT-000001', 'inventory', '-5.00', '-10.00'],
      ['inventory', 'opening of CPT-000002', '-5.00', '-15.00'],
      ['closing of CPT-000002', 'inventory', '-5.00', '-20.00'],
    ])
    expect(month.tanks[0]?.steps[0]?.perDay).toEqual({ value: '-1.22', unit: 'bbl' })
  })

  it('gives line fill a step of its own, since the book says more than the tank', () => {
    const movements = [aTicket('CPT-000001', '05T08:00', '30000.00', '05T20:00', '40000.00', '10012.00')]
    const tank = aTankRecord({ measurements: [anInventory('01T06:00', '30000.00'), anInventory('31T06:00', '40000.00')], movements })
    expect(steps(aPeriod([tank]))).toEqual([
      ['inventory', 'opening of CPT-000001', '0.00', '0.00'],
      ['opening of CPT-000001', 'closing of CPT-000001', '-12.00', '-12.00'],
      ['closing of CPT-000001', 'inventory', '0.00', '-12.00'],
    ])
  })

  it('takes an adjustment into the step in which it takes effect', () => {
    const tank = aTankRecord({ measurements: [anInventory('01T06:00', '30000.00'), anInventory('31T06:00', '29970.00')], movements: [anAdjustment('10T00:00', '-25.00')] })
    expect(steps(aPeriod([tank]))).toEqual([['inventory', 'inventory', '-5.00', '-5.00']])
    expect(report(aPeriod([tank])).tanks[0]?.result.adjustments.value).toBe('-25.00')
  })

  it('takes tickets that overlap as one stretch', () => {
    const movements = [
      aTicket('CPT-000001', '05T08:00', '30000.00', '05T20:00', '33000.00', '5000.00'),
      aTicket('CPT-000002', '05T12:00', '31500.00', '06T02:00', '31990.00', '-3000.00'),
    ]
    const tank = aTankRecord({ measurements: [anInventory('01T06:00', '30000.00'), anInventory('31T06:00', '31985.00')], movements })
    expect(steps(aPeriod([tank]))).toEqual([
      ['inventory', 'opening of CPT-000001', '0.00', '0.00'],
      ['opening of CPT-000001', 'closing of CPT-000002', '-10.00', '-10.00'],
      ['closing of CPT-000002', 'inventory', '-5.00', '-15.00'],
    ])
    expect(total(aPeriod([tank]))).toBe('-15.00')
  })

  it('leaves an inventory that was gauged during a ticket out of the steps', () => {
    const tank = aTankRecord()
    const during = anInventory('20T12:00', '35000.00', { seq: 60 })
    expect(steps(aPeriod([{ ...tank, measurements: [...tank.measurements, during] }]))).toEqual(steps(aPeriod([tank])))
  })

  it('takes the later entry of two inventories of one instant', () => {
    const tank = aTankRecord()
    const mended = anInventory('31T06:00', '31990.00', { seq: 99 })
    expect(total(aPeriod([{ ...tank, measurements: [mended, ...tank.measurements] }]))).toBe('-10.00')
  })

  it('gives no rate per day between gauges less than an hour apart', () => {
    const tank = aTankRecord({ measurements: [anInventory('01T06:00', '30000.00'), anInventory('05T07:30', '29996.00'), anInventory('31T06:00', '31980.00')] })
    expect(report(aPeriod([tank])).tanks[0]?.steps.map((step) => step.perDay?.value ?? null)).toEqual(['-0.98', null, '-0.69', '-0.48'])
  })
})

describe('the inventory that stands for a boundary', () => {
  it('is the nearest within twelve hours, before or after', () => {
    const tank = aTankRecord({ measurements: [anInventory('01T04:00', '30007.00', { seq: 3 }), anInventory('01T07:30', '30003.00', { seq: 4 }), anInventory('31T06:00', '31980.00')] })
    expect(report(aPeriod([tank])).tanks[0]).toMatchObject({ openingAt: '2026-03-01T07:30:00Z', result: { opening: { value: '30003.00' } } })
  })

  it('is never one that was gauged while a ticket was under way', () => {
    const movements = [aTicket('CPT-000001', '01T05:00', '30000.00', '01T14:00', '34000.00', '4000.00')]
    const tank = aTankRecord({ measurements: [anInventory('01T06:00', '30500.00'), anInventory('01T15:00', '34000.00', { seq: 2 }), anInventory('31T06:00', '34000.00')], movements })
    const [reconciled] = report(aPeriod([tank])).tanks
    expect(reconciled?.openingAt).toBe('2026-03-01T15:00:00Z')
    expect(reconciled?.receiptTickets).toEqual([])
    expect(reconciled?.result.lossGain.value).toBe('0.00')
  })

  it('makes two months meet: what closes March opens April, and a ticket across the boundary counts once', () => {
    const movements = [...aTankRecord().movements, aTicket('CPT-000003', '31T07:00', '31979.00', '31T17:00', '36979.00', '5000.00')]
    const measurements = [...aTankRecord().measurements, { ...anInventory('31T06:00', '36950.00'), seq: 200, at: '2026-04-30T06:00:00Z' }]
    const march = report(aPeriod([aTankRecord({ measurements, movements })]))
    const april = report(aPeriod([aTankRecord({ measurements, movements })], { from: '2026-03-31T06:00:00Z', to: '2026-04-30T06:00:00Z' }))
    expect(march.tanks[0]?.closingAt).toBe(april.tanks[0]?.openingAt)
    expect(march.tanks[0]?.receiptTickets).toEqual(['CPT-000001'])
    expect(april.tanks[0]?.receiptTickets).toEqual(['CPT-000003'])
    expect(april.tanks[0]?.result.lossGain.value).toBe('-30.00')
  })

  it('lists a tank that has none, with the reason, and reconciles the rest', () => {
    const without = aTankRecord({ tank: 'T-202', measurements: [anInventory('01T06:00', '30000.00')] })
    const month = report(aPeriod([without, aTankRecord()]))
    expect(month.tanks.map((tank) => tank.tank)).toEqual(['T-201'])
    expect(month.missing).toEqual([{ tank: 'T-202', message: 'to: no measured inventory of T-202; one measured within 12 h of 2026-03-31T06:00:00Z, with no ticket under way, is needed.' }])
  })
})

describe('what cannot be reconciled', () => {
  it('refuses a period that ends before it begins, and instants that cannot be read', () => {
    const codes = (period: PeriodRecord): string[] => { const outcome = reconcilePeriod(period); return outcome.ok ? [] : outcome.findings.map((finding) => `${finding.code} ${finding.path}`) }
    expect(codes(aPeriod([], { to: '2026-02-01T06:00:00Z' }))).toEqual(['period-backwards to'])
    expect(codes(aPeriod([], { from: '1 March', to: '2026-02-30T06:00:00Z' }))).toEqual(['unreadable-value from', 'unreadable-value to'])
    expect(codes(aPeriod([aTankRecord({ measurements: [] })]))).toEqual(['inventory-missing from', 'inventory-missing to'])
  })

  it('lists a tank whose product has no limit, and one that held another product', () => {
    const other = aTankRecord({ tank: 'T-301', movements: [aTicket('CPT-000009', '05T08:00', '30000.00', '05T20:00', '40000.00', '10000.00', { product: 'DIESEL' })] })
    const unlimited = aTankRecord({ tank: 'T-401', product: 'FUEL' })
    const month = report(aPeriod([aTankRecord(), other, unlimited]))
    expect(month.missing.map((line) => line.tank)).toEqual(['T-301', 'T-401'])
    expect(month.missing[0]?.message).toContain('DIESEL in bbl was gauged where GASO in bbl was expected')
    expect(month.missing[1]?.message).toContain('the limit of FUEL is missing')
  })
})

describe('several tanks', () => {
  const gaining = aTankRecord({ tank: 'T-202', measurements: [anInventory('01T06:00', '30000.00'), anInventory('31T06:00', '32018.00')] })

  it('adds tanks up to their product, with the limit of the product\'s own throughput', () => {
    const [product] = report(aPeriod([aTankRecord(), gaining])).products
    expect(product).toMatchObject({ tanks: ['T-201', 'T-202'], result: { lossGain: { value: '-2.00' }, throughput: { value: '16000.00' }, limit: { value: '32.00' }, verdict: 'within-limit' } })
  })

  it('points at two tanks of which one lost what the other gained', () => {
    expect(report(aPeriod([gaining, aTankRecord()])).oppositePairs).toEqual([{
      loses: 'T-201', gains: 'T-202', product: 'GASO', loss: { value: '-20.00', unit: 'bbl' }, gain: { value: '18.00', unit: 'bbl' },
      losingSteps: { thatWay: 4, of: 4 }, gainingSteps: { thatWay: 1, of: 3 },
    }])
  })

  it('points at no pair when the two differ by more than a fifth, or one is within its limit', () => {
    const larger = { ...gaining, measurements: [anInventory('01T06:00', '30000.00'), anInventory('31T06:00', '32025.01')] }
    const within = { ...gaining, measurements: [anInventory('01T06:00', '30000.00'), anInventory('31T06:00', '32016.00')] }
    expect(report(aPeriod([aTankRecord(), larger])).oppositePairs).toEqual([])
    expect(report(aPeriod([aTankRecord(), within])).oppositePairs).toEqual([])
  })
})

describe('properties', () => {
  const nsv = fc.integer({ min: 0, max: 10 ** 7 }).map((n) => new Decimal(n).div(100).toFixed(2))
  const minute = fc.integer({ min: 1, max: 43_198 })
  const at = (n: number): string => `${new Date(Date.UTC(2026, 2, 1, 6, n)).toISOString().slice(0, 19)}Z`
  const inventory = fc.record({ n: minute, nsv }).map(({ n, nsv: volume }) => ({ seq: n + 1000, product: 'GASO', at: at(n), nsv: volume, unit: 'bbl' }))
  const ticket = fc.record({ n: minute, length: fc.integer({ min: 1, max: 900 }), open: nsv, close: nsv, fill: fc.integer({ min: -50, max: 50 }), seq: fc.integer({ min: 1, max: 10 ** 6 }) }).map(({ n, length, open, close, fill, seq }) => {
    const change = new Decimal(close).minus(open).plus(fill)
    return { seq, kind: change.isNegative() ? 'delivery' as const : 'receipt' as const, number: `CPT-${String(seq)}`, product: 'GASO', openedAt: at(n), closedAt: at(Math.min(n + length, 43_199)), openingNsv: open, closingNsv: close, change: change.toFixed(2), unit: 'bbl' }
  })
  const adjustment = fc.record({ n: minute, change: fc.integer({ min: -10_000, max: 10_000 }), seq: fc.integer({ min: 10 ** 6 + 1, max: 10 ** 7 }) }).map(({ n, change, seq }) =>
    ({ seq, kind: 'adjustment' as const, number: '', product: 'GASO', openedAt: at(n), closedAt: at(n), openingNsv: '', closingNsv: '', change: new Decimal(change).div(100).toFixed(2), unit: 'bbl' }))
  const tank = fc.record({
    measurements: fc.array(inventory, { maxLength: 12 }).map((list) => [anInventory('01T06:00', '1000.00', { seq: 1 }), ...list, anInventory('31T06:00', '2000.00', { seq: 999_999_999 })]),
    movements: fc.tuple(fc.array(ticket, { maxLength: 12 }), fc.array(adjustment, { maxLength: 4 })).map((lists) => lists.flat()),
  }).map((parts) => aTankRecord(parts))

  it('the steps add up to the loss or gain exactly, whatever was gauged and booked', () => {
    fc.assert(fc.property(tank, (record) => {
      const [reconciled] = report(aPeriod([record])).tanks
      const sum = (reconciled?.steps ?? []).reduce((all, step) => all.plus(step.change.value), new Decimal(0))
      expect(sum.equals(reconciled?.result.lossGain.value ?? 'NaN')).toBe(true)
    }), { seed: 20260302, numRuns: 300 })
  })

  it('the order in which records are handed in changes nothing', () => {
    fc.assert(fc.property(tank, fc.array(fc.nat(), { minLength: 40, maxLength: 40 }), (record, keys) => {
      const shuffled = <T>(list: readonly T[]): T[] => list.map((item, i) => ({ item, key: keys[i] ?? 0 })).toSorted((a, b) => a.key - b.key).map(({ item }) => item)
      const other = { ...record, measurements: shuffled(record.measurements), movements: shuffled(record.movements) }
      expect(report(aPeriod([other]))).toEqual(report(aPeriod([record])))
    }), { seed: 20260303, numRuns: 200 })
  })
})
