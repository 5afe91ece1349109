import { describe, expect, it } from 'vitest'
import type { GaugeSnapshot } from '../../../core/gauge/index.ts'
import { staticQuantity, type Worksheet } from '../../../core/quantity/index.ts'
import { checkTank, criticalZoneOf, type FloatingRoof, type Tank } from '../../../core/tank/index.ts'
import { findingsOf, must } from '../../support/must.ts'
import { aProduct, anOpeningGauge } from '../../support/snapshots.ts'
import { aFloatingRoof, aTank } from '../../support/tanks.ts'

const gauge = (level: string, parts: Partial<GaugeSnapshot> = {}): GaugeSnapshot => anOpeningGauge({ level: { innage: level }, ...parts })
const worked = (tank: Tank, snapshot: GaugeSnapshot): Worksheet => must(staticQuantity(tank, aProduct(), snapshot))
const line = (worksheet: Worksheet, symbol: string) => worksheet.lines.find((one) => one.symbol === symbol)
const refused = (tank: Tank, snapshot: GaugeSnapshot) => findingsOf(staticQuantity(tank, aProduct(), snapshot)).map(({ code, path, value, limit }) => [code, path, value, limit])
/** Weight over density in air of this gauge and its CTL, as the worksheet prints them. */
const displaced = (worksheet: Worksheet, kg: number): number => kg / (Number(line(worksheet, 'D')?.value) * Number(worksheet.quantity.ctl))

const roofed = (parts: Parameters<typeof aFloatingRoof>[0] = {}): Tank => aTank({ roof: aFloatingRoof(parts) })
const inTable = { inTable: true, referenceDensity: '845.0 kg/m3' }

describe('snow or water on a floating roof', () => {
  it('displaces as much more as it weighs, whatever the table does with the roof', () => {
    for (const parts of [{}, inTable, { ...inTable, printedAdjustment: '0.065 m3/(kg/m3)' }]) {
      const bare = worked(roofed(parts), gauge('4.000 m'))
      const loaded = worked(roofed(parts), gauge('4.000 m', { roofLoad: '12.5 t' }))
      expect(Number(bare.quantity.fra.value) - Number(loaded.quantity.fra.value)).toBeCloseTo(displaced(loaded, 12_500), 2)
      expect(line(loaded, 'Wl')).toMatchObject({ value: '12.5', unit: 't' })
      const fra = line(loaded, parts === undefined || !('inTable' in parts) ? 'FRC' : 'FRA')
      expect(fra?.formula).toMatch(/ − Wl \/ \(D × CTL\)$/)
      for (const symbol of fra?.from ?? []) expect(line(loaded, symbol), symbol).toBeDefined()
    }
  })

  it('rests on the legs where the roof does', () => {
    const landed = worked(roofed(), gauge('1.200 m', { roofLoad: '12.5 t' }))
    expect(landed.quantity.fra.value).toBe('0.000')
    expect(line(landed, 'FRC')?.notes).toContain('the load on the roof rests on its legs')
  })

  it.each([
    ['without a roof to carry it', aTank(), '3 t', ['value-not-used', 'snapshot.roofLoad', '3 t', 'the tank has no floating roof that would carry it']],
    ['below nothing', roofed(), '-3 t', ['out-of-range', 'snapshot.roofLoad', '-3 t', '0 or more']],
    ['as a depth', roofed(), '30 mm', ['unit-not-accepted', 'snapshot.roofLoad', '30 mm', 'a mass as 551100 kg, 551.1 t or 1215000 lb']],
  ] as const)('is refused %s', (_says, tank, roofLoad, expected) => {
    expect(refused(tank, gauge('4.000 m', { roofLoad }))).toEqual([expected])
  })
})

describe('inside the critical zone', () => {
  it('no ticket (FRA-CRITICAL-ZONE)', () => {
    expect(refused(roofed(), gauge('1.800 m'))).toEqual([['roof-in-critical-zone', 'snapshot.level', '1800 mm', '1.600 m and 2.000 m']])
  })

  const reason = 'tank to be cleaned, both parties agree'
  it('but with a reason, which is printed; the roof outside the table is graded over the zone (common practice, no source)', () => {
    const worksheet = worked(roofed(), gauge('1.700 m', { criticalZoneReason: reason }))
    expect(worksheet.exceptions).toEqual([expect.objectContaining({ code: 'critical-zone-allowed', path: 'snapshot.level', message: `snapshot.level: at 1700 mm the roof was partly afloat, in its critical zone; booked all the same: ${reason} (MPMS-12.1.1 critical zone).` })])
    // a quarter of the way from 1600 to 2000 mm: a quarter of 48 500 kg
    expect(Number(worksheet.quantity.fra.value)).toBeCloseTo(-displaced(worksheet, 48_500 / 4), 2)
    expect(line(worksheet, 'FRC')?.clause).toBe('COMMON-PRACTICE grading within the critical zone')
  })

  it('a table that grades the roof itself is not adjusted within the zone', () => {
    const worksheet = worked(roofed(inTable), gauge('1.700 m', { criticalZoneReason: reason }))
    expect(worksheet.quantity.fra.value).toBe('0.000')
    expect(worksheet.exceptions).toHaveLength(1)
  })

  it('a reason that is not needed changes nothing and prints nothing', () => {
    const [without, withReason] = [worked(roofed(), gauge('4.000 m')), worked(roofed(), gauge('4.000 m', { criticalZoneReason: reason }))]
    expect(withReason).toEqual(without)
  })
})

describe('legs of the roof', () => {
  const legs = (position: 'low' | 'high') => ({ low: '1.500 m', high: '2.100 m', position }) as const
  const zone = (parts: Parameters<typeof aFloatingRoof>[0]) => { const { from, to } = must(criticalZoneOf(aFloatingRoof(parts) as FloatingRoof)); return [from.toNumber(), to.toNumber()] }

  it('in the low position leave the zone of the certificate; in the high one they lift it', () => {
    expect(zone({ legs: legs('low') })).toEqual([1600, 2000])
    expect(zone({ legs: legs('high') })).toEqual([2200, 2600])
  })

  it('raised under a table that deducts the roof from the low position: everything between is in doubt', () => {
    expect(zone({ ...inTable, legs: legs('high') })).toEqual([1600, 2600])
  })

  it('decide where a gauge is refused and where the roof stands', () => {
    const tank = roofed({ legs: legs('high') })
    expect(refused(tank, gauge('2.300 m'))).toEqual([['roof-in-critical-zone', 'snapshot.level', '2300 mm', '1.600 m and 2600 mm, its legs in the high position']])
    expect(line(worked(tank, gauge('2.100 m')), 'FRC')?.notes[0]).toBe('the roof stands on its legs below 2200 mm and displaces nothing')
    expect(worked(tank, gauge('4.000 m')).quantity).toEqual(worked(roofed(), gauge('4.000 m')).quantity)
  })

  it.each([
    ['upside down', { legs: { low: '2.1 m', high: '1.5 m', position: 'low' as const } }, ['out-of-range', 'tank.roof.legs.high', '1.5 m', 'above the low position, 2.1 m, which is 0 or more']],
    ['that cannot be read', { legs: { low: 'short', high: '1.5 m', position: 'low' as const } }, ['unreadable-value', 'tank.roof.legs.low', 'short', 'a length as 12.345 m, 8421 mm, 495.625 in or 41 ft 3 5/8 in']],
    ['so high that the zone leaves the table', { legs: { low: '1.5 m', high: '12 m', position: 'high' as const } }, ['out-of-range', 'tank.roof.criticalZone.to', '2.000 m', 'at most the last level of the capacity table, 12000 mm']],
  ])('are refused %s', (_says, parts, expected) => {
    expect(findingsOf(checkTank(roofed(parts))).map(({ code, path, value, limit }) => [code, path, value, limit])).toEqual([expected])
  })

  it('a sphere has no floating roof', () => {
    expect(findingsOf(checkTank(aTank({ shape: 'sphere', roof: aFloatingRoof() }))).map(({ code, path }) => [code, path])).toEqual([['value-not-used', 'tank.roof']])
  })
})

describe('water bottom', () => {
  it('above what the tank usually shows is printed, at it or below it is not', () => {
    const tank = aTank({ usualWaterCut: '60 mm' })
    expect(worked(tank, gauge('4.000 m', { waterCut: '61 mm' })).exceptions).toEqual([expect.objectContaining({ code: 'water-above-usual', path: 'snapshot.waterCut', value: '61 mm', limit: '60 mm' })])
    expect(worked(tank, gauge('4.000 m', { waterCut: '60 mm' })).exceptions).toEqual([])
    expect(worked(aTank(), gauge('4.000 m', { waterCut: '500 mm' })).exceptions).toEqual([])
  })

  it.each([['probe', ', found by the probe'], ['entered', ', entered, not gauged'], ['gauge', '']] as const)('by %s: the line says how the cut was found', (waterBy, words) => {
    expect(line(worked(aTank(), gauge('4.000 m', { waterBy })), 'FW')?.notes.at(-1)).toBe(`50 mm of water${words}`)
  })

  it.each([['without unit', '60', 'unreadable-value'], ['below nothing', '-1 mm', 'out-of-range']])('a usual cut %s is refused', (_says, usualWaterCut, code) => {
    expect(findingsOf(checkTank(aTank({ usualWaterCut }))).map((finding) => [finding.code, finding.path])).toEqual([[code, 'tank.usualWaterCut']])
  })
})
