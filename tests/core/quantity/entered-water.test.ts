import { describe, expect, it } from 'vitest'
import { gaugeSnapshotSchema, snapshotOfProbe, type GaugeSnapshot } from '../../../core/gauge/index.ts'
import { staticQuantity } from '../../../core/quantity/index.ts'
import { levelAtVolume, volumeAtLevel } from '../../../core/tank/index.ts'
import { Decimal } from '../../../core/units/index.ts'
import { probeIn, SIX } from '../../support/forward-probe.ts'
import { findingsOf, must } from '../../support/must.ts'
import { aProduct, anOpeningGauge } from '../../support/snapshots.ts'
import { aCapacityTable, aFloatingRoof, aTank } from '../../support/tanks.ts'
import { lineOf, quantityOf } from '../../support/worksheets.ts'

const { waterCut: _, ...uncut } = anOpeningGauge()
const origin = 'drain note 114'
/** 4 m of 200 m³ each, and water as a volume. */
const entered = (volume: string, parts: Partial<GaugeSnapshot> = {}): GaugeSnapshot => ({ ...uncut, waterVolume: { volume, origin }, ...parts })

describe('free water entered as a volume', () => {
  // API MPMS 12.1.1: GOV = (TOV − FW) × CTSh + FRA; 800 − 12.3 by hand
  it('is taken off as it was written, and says where it is from', () => {
    const sheet = quantityOf(aTank(), aProduct(), entered('12.3 m3'))
    expect(sheet.quantity).toMatchObject({ tov: { value: '800.000' }, fw: { value: '12.300', unit: 'm3' } })
    expect(lineOf(sheet.lines, 'FWe')).toMatchObject({ value: '12.3', unit: 'm3', rounding: 'as written', clause: 'MPMS-12.1.1 free water', notes: [`not gauged; from ${origin}`] })
    expect(lineOf(sheet.lines, 'FW')).toMatchObject({ formula: 'FWe', from: ['FWe'], notes: [`entered, not gauged: ${origin}`] })
    expect(sheet.lines.some(({ symbol }) => symbol === 'WC')).toBe(false)
  })

  it('gives the quantity of the cut at which the table holds as much', () => {
    expect(quantityOf(aTank(), aProduct(), entered('10 m3')).quantity).toEqual(quantityOf(aTank(), aProduct(), anOpeningGauge({ waterCut: '50 mm' })).quantity)
  })

  it('is converted exactly and rounded once: 100 bbl of 0.158987294928 m³', () => {
    const sheet = quantityOf(aTank(), aProduct(), entered('100 bbl'))
    expect(sheet.quantity.fw).toEqual({ value: '15.899', unit: 'm3' })
    expect(lineOf(sheet.lines, 'FW').notes).toContain('converted exactly from bbl to m3 before rounding')
  })

  it('may be none', () => expect(quantityOf(aTank(), aProduct(), entered('0 m3')).quantity.fw.value).toBe('0.000'))

  it('moves the lowest layer of spots up to where the table holds it: 20 m³ stand at 100 mm', () => {
    const spots = { liquid: undefined, ambient: '12 degC', average: 'by-volume', spots: [{ level: '1 m', temperature: '20 degC' }, { level: '3 m', temperature: '21 degC' }] } as const
    const { liquid: _liquid, ...temperatures } = spots
    const made = { temperatures: { ...temperatures, spots: [...spots.spots] } }
    const sheet = quantityOf(aTank(), aProduct(), entered('20 m3', made))
    expect(lineOf(sheet.lines, 'VT1')).toMatchObject({ value: '380.000', formula: 'V(2000 mm) − V(100 mm)' })
    expect(findingsOf(staticQuantity(aTank(), aProduct(), entered('200 m3', made)))).toMatchObject([{ code: 'out-of-range', path: 'snapshot.temperatures.spots.0.level', limit: 'above the free water, 1000 mm' }])
  })

  it('is printed where it stands above the tank\'s usual cut', () => {
    expect(quantityOf(aTank({ usualWaterCut: '50 mm' }), aProduct(), entered('10 m3')).exceptions).toEqual([])
    expect(quantityOf(aTank({ usualWaterCut: '50 mm' }), aProduct(), entered('10.1 m3')).exceptions).toMatchObject([{ code: 'water-above-usual', path: 'snapshot.waterVolume' }])
  })

  it('is not out of the table, so that a roof in the table does not hinder it', () => {
    const roof = aFloatingRoof({ inTable: true, referenceDensity: '845 kg/m3' })
    expect(quantityOf(aTank({ roof }), aProduct(), entered('350 m3')).quantity.fw.value).toBe('350.000')
    expect(findingsOf(staticQuantity(aTank({ roof }), aProduct(), anOpeningGauge({ waterCut: '1750 mm' })))).toMatchObject([{ code: 'out-of-range', path: 'snapshot.waterCut' }])
  })

  it.each<readonly [says: string, snapshot: GaugeSnapshot, answers: readonly string[]]>([
    ['neither cut nor volume', uncut, ['missing-value snapshot.waterCut']],
    ['a cut and a volume', entered('10 m3', { waterCut: '50 mm' }), ['value-not-used snapshot.waterVolume']],
    ['how a cut was found, beside a volume', entered('10 m3', { waterBy: 'gauge' }), ['value-not-used snapshot.waterBy']],
    ['no origin', { ...uncut, waterVolume: { volume: '10 m3', origin: ' ' } }, ['missing-value snapshot.waterVolume.origin']],
    ['less than none', entered('-0.1 m3'), ['out-of-range snapshot.waterVolume.volume']],
    ['more than stands in the tank', entered('800.001 m3'), ['out-of-range snapshot.waterVolume.volume']],
    ['more barrels than stand in the tank', entered('5031.849 bbl'), ['out-of-range snapshot.waterVolume.volume']],
    ['a length', entered('50 mm'), ['unit-not-accepted snapshot.waterVolume.volume']],
    ['a bare number', entered('10'), ['unreadable-value snapshot.waterVolume.volume']],
    ['all at once', { ...uncut, waterCut: '1 mm', waterVolume: { volume: 'some', origin: ' ' } }, ['value-not-used snapshot.waterVolume', 'missing-value snapshot.waterVolume.origin', 'unreadable-value snapshot.waterVolume.volume']],
  ])('refuses %s', (_says, snapshot, answers) => {
    expect(findingsOf(staticQuantity(aTank(), aProduct(), snapshot)).map(({ code, path }) => `${code} ${path}`).toSorted()).toEqual(answers.toSorted())
  })

  it('changes no snapshot that has a cut', () => {
    const before = anOpeningGauge()
    expect(JSON.stringify(gaugeSnapshotSchema.parse(before))).toBe(JSON.stringify(gaugeSnapshotSchema.parse(JSON.parse(JSON.stringify(before)))))
    expect(Object.keys(gaugeSnapshotSchema.parse(before))).not.toContain('waterVolume')
  })
})

describe('the level at which a table holds a volume', () => {
  const table = aCapacityTable({ rows: [['0', '3'], ['100', '10'], ['250', '40'], ['300', '41']] })
  it.each([['0', '0'], ['3', '0'], ['6.5', '50'], ['10', '100'], ['25', '175'], ['41', '300']])('%s m³ stand at %s mm', (volume, level) => {
    const found = must(levelAtVolume(table, new Decimal(volume), 'v'))
    expect(found.toFixed()).toBe(level)
    if (volume !== '0') expect(must(volumeAtLevel(table, found, 'l')).volume.toFixed()).toBe(volume)
  })
  it('refuses more than its last row', () => expect(findingsOf(levelAtVolume(table, new Decimal('41.001'), 'v'))).toMatchObject([{ code: 'out-of-range', path: 'v', limit: 'at most 41 m3, the last row of the table' }]))
})

describe('beside a probe', () => {
  const fixed = { tank: 'T', product: 'P', at: '2026-03-14T06:10:00Z', by: 'M. Duarte', sedimentAndWater: '0 %', waterVolume: { volume: '2 m3', origin } }
  it('stands for the cut that it did not see', () => {
    const { capacityTable, ...reading } = probeIn({ layers: [{ to: 20, rho: 840 }], level: 10, heights: SIX })
    const made = must(snapshotOfProbe(fixed, reading, capacityTable))
    expect(made.waterVolume).toEqual(fixed.waterVolume)
    expect(made.waterCut).toBeUndefined()
  })
  it('is refused where the probe saw water', () => {
    const { capacityTable, ...reading } = probeIn({ layers: [{ to: 3, rho: 1000 }, { to: 20, rho: 800 }], level: 10, heights: SIX }, { waterThreshold: '810 kg/m3' })
    expect(findingsOf(snapshotOfProbe(fixed, reading, capacityTable))).toMatchObject([{ code: 'value-not-used', path: 'snapshot.waterVolume' }])
  })
})
