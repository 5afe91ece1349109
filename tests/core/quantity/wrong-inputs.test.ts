import { describe, expect, it } from 'vitest'
import type { GaugeSnapshot } from '../../../core/gauge/index.ts'
import { staticQuantity, type Product } from '../../../core/quantity/index.ts'
import type { Tank } from '../../../core/tank/index.ts'
import { wording } from '../../../core/refusal/index.ts'
import { findingsOf } from '../../support/must.ts'
import { aProduct, anOpeningGauge } from '../../support/snapshots.ts'
import { aCapacityTable, aFloatingRoof, aTank } from '../../support/tanks.ts'

interface Wrong {
  readonly says: string
  readonly tank?: Partial<Tank>
  readonly product?: Partial<Product>
  readonly snapshot?: Partial<GaugeSnapshot>
  /** code, path, value, limit, clause */
  readonly answer: readonly [string, string, string, string, string]
}

const LENGTH = 'a length as 12.345 m, 8421 mm, 495.625 in or 41 ft 3 5/8 in'
const LIQUID = '-50 to 150 degC'
const LIMITS = 'MPMS-11.1-2004 11.1.3'
const temperatures = (parts: Partial<GaugeSnapshot['temperatures']>): Partial<GaugeSnapshot> => ({ temperatures: { liquid: '20.0 degC', ambient: '12.0 degC', ...parts } })
const density = (parts: Partial<GaugeSnapshot['density']>): Partial<GaugeSnapshot> => ({ density: { value: '845.3 kg/m3', instrument: 'base', ...parts } })
const roofed = (parts: Parameters<typeof aFloatingRoof>[0] = {}): Partial<Tank> => ({ roof: aFloatingRoof(parts) })

const SNAPSHOTS: readonly Wrong[] = [
  { says: 'a level without unit', snapshot: { level: { innage: '4.000' } }, answer: ['unreadable-value', 'snapshot.level.innage', '4.000', LENGTH, 'HOUSE units'] },
  { says: 'a level with a decimal comma', snapshot: { level: { innage: '4,000 m' } }, answer: ['unreadable-value', 'snapshot.level.innage', '4,000 m', LENGTH, 'HOUSE units'] },
  { says: 'a level in a unit of volume', snapshot: { level: { innage: '4.000 bbl' } }, answer: ['unit-not-accepted', 'snapshot.level.innage', '4.000 bbl', LENGTH, 'HOUSE units'] },
  { says: 'a level below datum', snapshot: { level: { innage: '-1 mm' }, waterCut: '0 mm' }, answer: ['out-of-range', 'snapshot.level.innage', '-1 mm', '0 or more', 'MPMS-3.1A gauging procedures'] },
  { says: 'a level that the table does not reach', snapshot: { level: { innage: '12.001 m' } }, answer: ['level-outside-table', 'snapshot.level', '12001 mm', '0 mm to 12000 mm', 'MPMS-12.1.1 total observed volume'] },
  { says: 'a level above the reference point', tank: { referenceGaugeHeight: '12.000 m' }, snapshot: { level: { innage: '12.100 m' } }, answer: ['out-of-range', 'snapshot.level.innage', '12.100 m', 'at most the reference gauge height, 12.000 m', 'MPMS-3.1A reference gauge height'] },
  { says: 'an ullage of more than the reference gauge height', snapshot: { level: { ullage: '13.251 m' } }, answer: ['ullage-beyond-reference-height', 'snapshot.level.ullage', '13.251 m', '13.250 m', 'MPMS-3.1A reference gauge height'] },
  { says: 'an ullage below 0', snapshot: { level: { ullage: '-0.5 in' } }, answer: ['out-of-range', 'snapshot.level.ullage', '-0.5 in', '0 or more', 'MPMS-3.1A gauging procedures'] },
  { says: 'a reference gauge height that cannot be read', snapshot: { level: { ullage: '9.25 m', observedReferenceHeight: 'ok' } }, answer: ['unreadable-value', 'snapshot.level.observedReferenceHeight', 'ok', LENGTH, 'HOUSE units'] },
  { says: 'water above the level', snapshot: { waterCut: '4.001 m' }, answer: ['water-above-level', 'snapshot.waterCut', '4.001 m', '4000 mm', 'MPMS-3.1A free water'] },
  { says: 'water below datum', snapshot: { waterCut: '-5 mm' }, answer: ['out-of-range', 'snapshot.waterCut', '-5 mm', '0 or more', 'MPMS-3.1A gauging procedures'] },
  { says: 'twelve inches beside feet', snapshot: { waterCut: '1 ft 12 in' }, answer: ['unreadable-value', 'snapshot.waterCut', '1 ft 12 in', 'inches below 12 with halves to sixty-fourths, as 41 ft 3 5/8 in', 'HOUSE units'] },
  { says: 'a liquid hotter than the standard goes', snapshot: temperatures({ liquid: '150.05 degC' }), answer: ['out-of-range', 'snapshot.temperatures.liquid', '150.05 degC', LIQUID, LIMITS] },
  { says: 'a temperature without unit', snapshot: temperatures({ liquid: '20.0' }), answer: ['unreadable-value', 'snapshot.temperatures.liquid', '20.0', 'a temperature as 88.3 degF or 31.25 degC', 'HOUSE units'] },
  { says: 'an uninsulated tank without the temperature of the air', snapshot: temperatures({ ambient: undefined }), answer: ['missing-value', 'snapshot.temperatures.ambient', '', 'the shell temperature of a tank that is not insulated needs the temperature of the air', 'MPMS-12.1.1 shell temperature'] },
  { says: 'air in °C that was read in °F', snapshot: temperatures({ ambient: '71 degC' }), answer: ['out-of-range', 'snapshot.temperatures.ambient', '71 degC', '-60 to 65 degC (-76 to 149 degF)', 'HOUSE gauge snapshot'] },
  { says: 'a spot above the liquid', snapshot: temperatures({ spots: [{ level: '3.5 m', temperature: '20 degC' }, { level: '4.1 m', temperature: '20 degC' }] }), answer: ['out-of-range', 'snapshot.temperatures.spots.1.level', '4.1 m', '0 to the level, 4000 mm', 'MPMS-7 spot temperatures'] },
  { says: 'a density outside the group', snapshot: density({ value: '600 kg/m3' }), answer: ['density-outside-group', 'snapshot.density.value', '600 kg/m3', '610.6 to 1163.5 kg/m3 at 60 degF for crude', LIMITS] },
  { says: 'a hydrometer reading without its temperature', snapshot: density({ instrument: 'hydrometer' }), answer: ['missing-value', 'snapshot.density.temperature', '', 'an observed density counts only with the temperature of the sample', 'MPMS-9 hydrometer reading'] },
  { says: 'a density meter without its temperature', snapshot: density({ instrument: 'density-meter' }), answer: ['missing-value', 'snapshot.density.temperature', '', 'an observed density counts only with the temperature of the sample', 'MPMS-9 hydrometer reading'] },
  { says: 'a base density with a temperature', snapshot: density({ temperature: '15 degC' }), answer: ['value-not-used', 'snapshot.density.temperature', '15 degC', 'a base density is at base conditions; leave it out, or name the instrument that showed the density', 'HOUSE gauge snapshot'] },
  { says: 'a pressure above the standard\'s range', snapshot: { pressure: '10343 kPa' }, answer: ['out-of-range', 'snapshot.pressure', '10343 kPa', '0 to 10342 kPa gauge; below the atmosphere it is taken as 0, below a vacuum there is none', LIMITS] },
  { says: 'more S&W than liquid', snapshot: { sedimentAndWater: '100.1 %' }, answer: ['out-of-range', 'snapshot.sedimentAndWater', '100.1 %', '0 to 100 %', 'MPMS-12.1.1 CSW'] },
  { says: 'S&W without per cent', snapshot: { sedimentAndWater: '0.2' }, answer: ['unreadable-value', 'snapshot.sedimentAndWater', '0.2', 'a share as 0.35 %', 'HOUSE units'] },
  { says: 'a local time', snapshot: { at: '2026-03-14T06:10:00+01:00' }, answer: ['unreadable-value', 'snapshot.at', '2026-03-14T06:10:00+01:00', 'a UTC instant as 2026-03-14T06:10:00Z', 'RFC-3339 5.6'] },
  { says: 'a day that is not in the calendar', snapshot: { at: '2026-02-29T06:10:00Z' }, answer: ['unreadable-value', 'snapshot.at', '2026-02-29T06:10:00Z', 'a UTC instant as 2026-03-14T06:10:00Z', 'RFC-3339 5.6'] },
  { says: 'a gauge of another tank', snapshot: { tank: 'T-102' }, answer: ['tank-differs', 'snapshot.tank', 'T-102', 'T-101', 'HOUSE gauge snapshot'] },
  { says: 'a gauge of another product', snapshot: { product: 'GASOIL' }, answer: ['product-differs', 'snapshot.product', 'GASOIL', 'CRUDE', 'HOUSE gauge snapshot'] },
  { says: 'a tank in service for another product', tank: { product: 'GASOIL' }, answer: ['product-differs', 'tank.product', 'CRUDE', 'GASOIL', 'HOUSE gauge snapshot'] },
  { says: 'a special application without its factor', product: { commodity: 'special' }, answer: ['missing-value', 'product.alpha', '', 'a special application needs its thermal expansion factor at 60 °F, as 0.000510 /degF', 'MPMS-11.1-2004 11.1.6.1'] },
]

const TANKS: readonly Wrong[] = [
  { says: 'a roof partly afloat', tank: roofed(), snapshot: { level: { innage: '1.800 m' } }, answer: ['roof-in-critical-zone', 'snapshot.level', '1800 mm', '1.600 m and 2.000 m', 'MPMS-12.1.1 critical zone'] },
  { says: 'a critical zone upside down', tank: roofed({ criticalZone: { from: '2.000 m', to: '1.600 m' } }), answer: ['out-of-range', 'tank.roof.criticalZone.to', '1.600 m', 'above 2.000 m, where the critical zone begins', 'MPMS-12.1.1 critical zone'] },
  { says: 'a critical zone above the table', tank: roofed({ criticalZone: { from: '2.000 m', to: '12.500 m' } }), snapshot: { level: { innage: '1.500 m' } }, answer: ['out-of-range', 'tank.roof.criticalZone.to', '12.500 m', 'at most the last level of the capacity table, 12000 mm', 'MPMS-12.1.1 critical zone'] },
  { says: 'a table with roof and no reference density', tank: roofed({ inTable: true }), answer: ['missing-value', 'tank.roof.referenceDensity', '', 'a table that deducts the roof states the density it was deducted for', 'MPMS-12.1.1 floating roof adjustment'] },
  { says: 'a table without roof and a reference density', tank: roofed({ referenceDensity: '850 kg/m3' }), answer: ['value-not-used', 'tank.roof.referenceDensity', '850 kg/m3', 'the table does not deduct the roof; leave it out, or say that the table deducts it', 'MPMS-12.1.1 floating roof adjustment'] },
  { says: 'a reference density of steel', tank: roofed({ inTable: true, referenceDensity: '7850 kg/m3' }), answer: ['out-of-range', 'tank.roof.referenceDensity', '7850 kg/m3', '500 to 1200 kg/m3', 'HOUSE tank'] },
  { says: 'a printed adjustment without its density unit', tank: roofed({ inTable: true, referenceDensity: '850 kg/m3', printedAdjustment: '24.59 bbl' }), answer: ['unreadable-value', 'tank.roof.printedAdjustment', '24.59 bbl', 'an adjustment as 24.59 bbl/degAPI or 0.065 m3/(kg/m3)', 'HOUSE units'] },
  { says: 'a roof without mass', tank: roofed({ mass: '0 kg' }), answer: ['out-of-range', 'tank.roof.mass', '0 kg', 'more than 0', 'MPMS-12.1.1 floating roof adjustment'] },
  { says: 'a roof that would sink', tank: roofed({ mass: '900 t' }), answer: ['out-of-range', 'tank.roof.mass', '900 t', 'a roof that displaces no more than the tank holds, 800.000 m3', 'MPMS-12.1.1 floating roof adjustment'] },
  { says: 'water where the table begins to deduct the roof', tank: roofed({ inTable: true, referenceDensity: '850 kg/m3' }), snapshot: { waterCut: '1.700 m' }, answer: ['out-of-range', 'snapshot.waterCut', '1700 mm', 'at most 1.600 m, where the capacity table begins to deduct the roof', 'MPMS-12.1.1 free water'] },
  { says: 'a reference gauge height within the table', tank: { referenceGaugeHeight: '11.9 m' }, answer: ['out-of-range', 'tank.referenceGaugeHeight', '11.9 m', 'at least the last level of the capacity table, 12000 mm', 'MPMS-3.1A reference gauge height'] },
  { says: 'a tolerance below 0', tank: { referenceHeightTolerance: '-3 mm' }, answer: ['out-of-range', 'tank.referenceHeightTolerance', '-3 mm', '0 or more', 'HOUSE tank'] },
  { says: 'a table that does not rise', tank: { capacityTable: aCapacityTable({ rows: [['0', '0'], ['8000', '900'], ['8000', '950'], ['12000', '2400']] }) }, answer: ['capacity-table-not-increasing', 'tank.capacityTable.rows.3', 'level 8000 mm', 'it must be above 8000 mm', 'MPMS-2.2A capacity table'] },
  { says: 'a table whose volume falls', tank: { capacityTable: aCapacityTable({ rows: [['0', '0'], ['8000', '900'], ['9000', '899.999'], ['12000', '2400']] }) }, answer: ['capacity-table-not-increasing', 'tank.capacityTable.rows.3', 'volume 899.999', 'it must not be less than 900', 'MPMS-2.2A capacity table'] },
  { says: 'a table with a word in it', tank: { capacityTable: aCapacityTable({ rows: [['0', '0'], ['8000', 'n/a'], ['12000', '2400']] }) }, answer: ['capacity-table-line', 'tank.capacityTable.rows.2', '8000, n/a', 'a level in mm and a volume, both decimal numbers of zero or more', 'HOUSE capacity table'] },
  { says: 'a table at a temperature without unit', tank: { capacityTable: aCapacityTable({ baseTemperature: '15' }) }, answer: ['unreadable-value', 'tank.capacityTable.baseTemperature', '15', 'a temperature as 88.3 degF or 31.25 degC', 'HOUSE units'] },
  { says: 'a certificate of a day that is not in the calendar', tank: { capacityTable: aCapacityTable({ issuedOn: '2024-04-31' }) }, answer: ['unreadable-value', 'tank.capacityTable.issuedOn', '2024-04-31', 'a date of the calendar as 2024-02-11', 'RFC-3339 5.6'] },
]

describe('one wrong input, one finding that names field, value, limit and clause', () => {
  it.each([...SNAPSHOTS, ...TANKS])('$says: $answer.0 at $answer.1', ({ tank, product, snapshot, answer }) => {
    const findings = findingsOf(staticQuantity(aTank(tank), aProduct(product), anOpeningGauge(snapshot)))
    const [code, path, value, limit, clause] = answer
    expect(findings).toEqual([{ code, path, value, limit, clause }])
    expect(wording(findings[0]!)).toContain(path)
  })
})

describe('several wrong inputs', () => {
  it('are all answered at once, whichever part they are in', () => {
    const outcome = staticQuantity(
      aTank({ referenceHeightTolerance: '3' }), aProduct({ code: 'GASOIL' }),
      anOpeningGauge({ at: 'noon', level: { innage: '12.5 m' }, waterCut: '50', sedimentAndWater: '-1 %', temperatures: { liquid: '20 degK' } }),
    )
    expect(findingsOf(outcome).map(({ code, path }) => `${code} ${path}`)).toEqual([
      'unreadable-value tank.referenceHeightTolerance',
      'product-differs snapshot.product', 'product-differs tank.product',
      'unreadable-value snapshot.at', 'unreadable-value snapshot.waterCut', 'unit-not-accepted snapshot.temperatures.liquid',
      'missing-value snapshot.temperatures.ambient', 'out-of-range snapshot.sedimentAndWater',
    ])
  })

  it('name a level outside the table beside a value that cannot be read', () => {
    const outcome = staticQuantity(aTank(), aProduct(), anOpeningGauge({ level: { innage: '12.5 m' }, sedimentAndWater: 'none' }))
    expect(findingsOf(outcome).map(({ code }) => code)).toEqual(['unreadable-value', 'level-outside-table'])
  })
})

describe('an observed reference gauge height beyond the tolerance', () => {
  it('is allowed, and printed', () => {
    const outcome = staticQuantity(aTank(), aProduct(), anOpeningGauge({ level: { ullage: '9.250 m', observedReferenceHeight: '13.246 m' } }))
    expect(outcome.ok && outcome.value.exceptions).toEqual([{
      code: 'reference-height-differs', path: 'snapshot.level.observedReferenceHeight', value: '13.246 m', limit: '13.250 m ± 3 mm, off by -4 mm',
      clause: 'MPMS-3.1A reference gauge height',
      message: 'snapshot.level.observedReferenceHeight: observed reference gauge height 13.246 m differs from the certificate by more than is allowed: 13.250 m ± 3 mm, off by -4 mm.',
    }])
  })
})
