import { describe, expect, it } from 'vitest'
import { gaugeSnapshotSchema } from '../../../core/gauge/index.ts'
import { EMPTY_GAUGE, withLine, withoutLine, withValue, valueOf, type GaugeForm } from '../../../renderer/gauge/gauge-form.ts'
import { headOf } from '../../../renderer/gauge/line-names.ts'
import { linesOf, sheetSections } from '../../../renderer/gauge/sheet-sections.ts'
import { snapshotFrom } from '../../../renderer/gauge/snapshot-of-sheet.ts'
import { sheetOfSnapshot } from '../../../renderer/gauge/sheet-of-snapshot.ts'
import { anOpeningGauge } from '../../support/snapshots.ts'

const LISBON = 'Europe/Lisbon'
const filled: GaugeForm = {
  ...EMPTY_GAUGE, at: '2026-07-14 07:10', by: 'M. Duarte', level: '9.250 m', levelBy: 'ullage', referenceHeight: '13.251 m', waterCut: '50 mm', liquid: '20.0 degC',
  ambient: '12.0 degC', density: '845.3 kg/m3', densityTemperature: '18.5 degC', instrument: 'hydrometer', sedimentAndWater: '0.20 %', remarks: 'calm',
  spots: [{ level: '3.000 m', temperature: '20.1 degC' }],
}

describe('a gauge sheet', () => {
  it('becomes a snapshot with every text as it was typed and the time in UTC', () => {
    const { snapshot, time } = snapshotFrom(filled, 'T-101', 'CRUDE', LISBON)
    expect(time.ok).toBe(true)
    expect(gaugeSnapshotSchema.parse(snapshot)).toEqual({
      tank: 'T-101', product: 'CRUDE', at: '2026-07-14T06:10:00Z', by: 'M. Duarte', level: { ullage: '9.250 m', observedReferenceHeight: '13.251 m' }, waterCut: '50 mm',
      temperatures: { liquid: '20.0 degC', ambient: '12.0 degC', spots: [{ level: '3.000 m', temperature: '20.1 degC' }] },
      density: { value: '845.3 kg/m3', temperature: '18.5 degC', instrument: 'hydrometer' }, sedimentAndWater: '0.20 %', remarks: 'calm',
    })
  })
  it('with water entered as a volume asks for it and its origin in place of the cut', () => {
    const sheet: GaugeForm = { ...filled, waterBy: 'volume', waterCut: '', waterVolume: '12.3 m3', waterOrigin: 'drain note 114' }
    expect(linesOf(sheet)).toEqual(expect.arrayContaining(['waterVolume', 'waterOrigin']))
    expect(linesOf(sheet)).not.toContain('waterCut')
    const { snapshot } = snapshotFrom(sheet, 'T-101', 'CRUDE', LISBON)
    expect(gaugeSnapshotSchema.parse(snapshot)).toMatchObject({ waterVolume: { volume: '12.3 m3', origin: 'drain note 114' } })
    expect(Object.keys(snapshot)).not.toContain('waterCut')
    expect(sheetOfSnapshot(snapshot, LISBON)).toEqual(sheet)
  })
  it('comes back from a snapshot as it was', () => {
    expect(sheetOfSnapshot(snapshotFrom(filled, 'T-101', 'CRUDE', LISBON).snapshot, LISBON)).toEqual(filled)
    const read = anOpeningGauge()
    expect(snapshotFrom(sheetOfSnapshot(read, LISBON), read.tank, read.product, LISBON).snapshot).toEqual(read)
  })
  it('hands on what was not measured as absent, never as a value', () => {
    const { snapshot } = snapshotFrom({ ...filled, ambient: '', remarks: ' ', referenceHeight: '', spots: [{ level: '', temperature: '' }] }, 'T-101', 'CRUDE', LISBON)
    expect(snapshot.temperatures).toEqual({ liquid: '20.0 degC' })
    expect(snapshot.level).toEqual({ ullage: '9.250 m' })
    expect('remarks' in snapshot).toBe(false)
  })
  it('does not hand on a density temperature that its instrument has no line for', () => {
    expect(snapshotFrom({ ...filled, instrument: 'base' }, 'T-101', 'CRUDE', LISBON).snapshot.density).toEqual({ value: '845.3 kg/m3', instrument: 'base' })
  })
  it('has the lines that its choices ask for', () => {
    expect(linesOf(EMPTY_GAUGE)).not.toContain('referenceHeight')
    expect(linesOf({ ...EMPTY_GAUGE, levelBy: 'ullage' })).toContain('referenceHeight')
    expect(linesOf({ ...EMPTY_GAUGE, instrument: 'base' })).not.toContain('densityTemperature')
    expect(linesOf({ ...EMPTY_GAUGE, instrument: 'density-meter' })).toContain('densityPressure')
    expect(sheetSections([EMPTY_GAUGE, filled]).find(({ name }) => name === 'spots')?.lines).toContain('spots.0.level')
    expect(headOf('level', [EMPTY_GAUGE, filled])).toBe('Innage / ullage')
  })
  it('takes spots one by one', () => {
    const two = withLine(withLine(EMPTY_GAUGE, 'spots'), 'spots')
    const written = withValue(withValue(two, 'spots.1.level', '2 m'), 'spots.1.temperature', '19 degC')
    expect(valueOf(written, 'spots.1.temperature')).toBe('19 degC')
    expect(withoutLine(written, 'spots', 0).spots).toEqual([{ level: '2 m', temperature: '19 degC' }])
  })
})
