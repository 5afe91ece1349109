import { describe, expect, it } from 'vitest'
import { gaugeSnapshotSchema } from '../../../core/gauge/index.ts'
import { staticQuantity } from '../../../core/quantity/index.ts'
import { kindOf, lineOfPath } from '../../../renderer/gauge/field-kinds.ts'
import { EMPTY_GAUGE, gaugeFormSchema, valueOf, withLine, withoutLine, withValue, type GaugeForm } from '../../../renderer/gauge/gauge-form.ts'
import { headOf, lineName } from '../../../renderer/gauge/line-names.ts'
import { pictureLevels } from '../../../renderer/gauge/picture-levels.ts'
import { isUsed, linesOf, SECTIONS, sheetSections } from '../../../renderer/gauge/sheet-sections.ts'
import { sheetOfSnapshot } from '../../../renderer/gauge/sheet-of-snapshot.ts'
import { snapshotFrom } from '../../../renderer/gauge/snapshot-of-sheet.ts'
import { must } from '../../support/must.ts'
import { aFilledGauge } from '../a-sheet.ts'
import { PRODUCTS, TANKS } from '../a-yard.ts'

const LISBON = 'Europe/Lisbon'
/** A sheet on which every part is used. */
const full: GaugeForm = {
  ...aFilledGauge(), level: '', levelBy: 'ullage', referenceHeight: '13.250 m', waterCut: '50 mm', liquid: '', ambient: '12 degC', density: '', densityTemperature: '', sedimentAndWater: '', average: 'plain',
  readings: [{ read: '9.220 m', bob: '30 mm' }, { read: '9.221 m', bob: '30 mm' }, { read: '9.220 m', bob: '30 mm' }],
  tape: { acceptance: 'CFR43-3174.6', bob: 'outage', temperature: '24 degC', standardAt: '20 degC', correction: '-1 mm', certificate: 'TP-7' },
  spots: [{ level: '3.5 m', temperature: '20.5 degC' }, { level: '2 m', temperature: '20.0 degC' }, { level: '0.5 m', temperature: '19.5 degC' }],
  samples: [{ from: 'running', number: 'S-17', at: '2026-03-14 06:05', instrument: 'hydrometer', density: '841.0 kg/m3', densityTemperature: '19.0 degC', sedimentAndWater: '0.20 %' }],
  hybrid: { ...EMPTY_GAUGE.hybrid, bottomHeight: '200 mm', bottomPressure: '31.2 kPa', topHeight: '12 m', topPressure: '0 kPa', gravity: '9.80665 m/s2', vapourDensity: '1.2 kg/m3', limit: '5 kg/m3' },
  waterBy: 'probe',
}

describe('the parts of a sheet', () => {
  it('fill in a snapshot that the core reads, and come back as they were', () => {
    const { snapshot } = snapshotFrom(full, 'T-101', 'CRUDE', LISBON)
    expect(gaugeSnapshotSchema.parse(snapshot)).toEqual(snapshot)
    expect(sheetOfSnapshot(snapshot, LISBON)).toEqual(full)
    const { lines } = must(staticQuantity(TANKS[0]!, PRODUCTS[0]!, snapshot))
    // 9220 + 30 mm of outage bob, the two identical; (9250 − 1) × (1 + 0.0000112 × 4) = 9249.41; 13250 − 9249.4
    expect(lines.find(({ symbol }) => symbol === 'L')?.value).toBe('4000.6')
    expect(lines.find(({ symbol }) => symbol === 't')?.value).toBe('20.00')
  })

  it('an automatic gauge has a name and a status, and no tape', () => {
    const form: GaugeForm = { ...aFilledGauge(), readBy: 'automatic', gaugeId: 'LT-101', gaugeStatus: 'disturbed' }
    expect(snapshotFrom(form, 'T-101', 'CRUDE', LISBON).snapshot.instrument).toEqual({ kind: 'automatic', id: 'LT-101', status: 'disturbed' })
    expect(linesOf(form)).toContain('gaugeStatus')
    expect(linesOf(EMPTY_GAUGE)).not.toContain('gaugeStatus')
  })

  it('what is made from a list has no line of its own', () => {
    expect(linesOf(full)).not.toEqual(expect.arrayContaining(['level']))
    for (const line of ['level', 'liquid', 'density', 'sedimentAndWater'] as const) {
      expect(linesOf(EMPTY_GAUGE)).toContain(line)
      expect(linesOf(full)).not.toContain(line)
    }
  })

  it('are folded away only while nothing stands in them', () => {
    expect(SECTIONS.filter((section) => isUsed(section, EMPTY_GAUGE, EMPTY_GAUGE))).toEqual([])
    expect(SECTIONS.filter((section) => isUsed(section, full, EMPTY_GAUGE))).toEqual(['readings', 'spots', 'samples', 'pressures', 'roof'])
  })

  it('of two gauges have every line that one of them has, in an order that fits both', () => {
    const lines = sheetSections([aFilledGauge({ instrument: 'base' }), aFilledGauge({ levelBy: 'ullage', instrument: 'density-meter' })])[0]?.lines
    expect(lines).toEqual(['at', 'by', 'levelBy', 'level', 'referenceHeight', 'waterCut', 'liquid', 'ambient', 'instrument', 'density', 'densityTemperature', 'densityPressure', 'sedimentAndWater', 'pressure', 'remarks'])
  })

  it('every line has a name, a head and a kind', () => {
    for (const form of [full, EMPTY_GAUGE, { ...EMPTY_GAUGE, readBy: 'automatic' as const }]) {
      for (const line of linesOf(form)) expect([lineName(line), headOf(line, [form]), kindOf(line)].every((word) => typeof word === 'string' && word !== '' && !word.includes('undefined'))).toBe(true)
    }
  })
})

describe('lists on a sheet', () => {
  it('a first reading takes over the level that was written', () => {
    const one = withLine(aFilledGauge({ level: '4000 mm' }), 'readings')
    expect(one.readings).toEqual([{ read: '4000 mm', bob: '' }])
    expect(withLine(one, 'readings').readings[1]).toEqual({ read: '', bob: '' })
    expect(withoutLine(one, 'readings', 0).level).toBe('4000 mm')
  })
  it('are written line by line', () => {
    const written = withValue(withLine(EMPTY_GAUGE, 'samples'), 'samples.0.from', 'upper')
    expect(valueOf(written, 'samples.0.from')).toBe('upper')
    expect(valueOf(written, 'samples.3.from')).toBe('')
    expect(withValue(EMPTY_GAUGE, 'tape.temperature', '24 degC').tape.temperature).toBe('24 degC')
  })
  it('a draft of before, without these parts, is read as it was', () => {
    const { readings, tape, samples, readBy, gaugeId, gaugeStatus, hybrid, waterBy, roofLoad, criticalZoneReason, average, ...before } = aFilledGauge()
    expect(gaugeFormSchema.parse(before)).toEqual(aFilledGauge())
  })
})

describe('where a finding stands', () => {
  it.each([
    ['level.readings.1.bob', 'readings.1.bob'], ['level.readings', 'readings.0.read'], ['tape.standardAt', 'tape.standardAt'], ['temperatures.spots', 'spots.0.level'], ['temperatures.average', 'average'],
    ['samples.1.density.temperature', 'samples.1.densityTemperature'], ['samples.0.density.value', 'samples.0.density'], ['samples.2', 'samples.2.number'], ['samples', 'samples.0.number'],
    ['instrument', 'gaugeId'], ['instrument.status', 'gaugeStatus'], ['hybrid.top.pressure', 'hybrid.topPressure'], ['hybrid', 'hybrid.bottomPressure'], ['roofLoad', 'roofLoad'], ['criticalZoneReason', 'criticalZoneReason'],
  ])('%s is on line %s', (path, line) => {
    expect(lineOfPath(path)).toBe(line)
  })
})

describe('the profile on the picture', () => {
  it('goes from the bottom up, the coldest at 0 and the warmest at 1', () => {
    expect(pictureLevels(full, TANKS[0]!).spots.map(({ label, warmth }) => [label, warmth])).toEqual([['19.5 degC', 0], ['20.0 degC', 0.5], ['20.5 degC', 1]])
    expect(pictureLevels({ ...full, spots: [{ level: '2 m', temperature: 'warm' }] }, TANKS[0]!).spots).toEqual([])
  })
  it('the last of repeated readings stands for the level', () => {
    expect(pictureLevels({ ...EMPTY_GAUGE, readings: [{ read: '1 m', bob: '' }, { read: '6.625 m', bob: '' }] }, TANKS[0]!).liquid).toBe(0.5)
  })
})
