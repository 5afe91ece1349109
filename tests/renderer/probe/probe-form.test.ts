import { describe, expect, it } from 'vitest'
import { withProbeLevels } from '../../../core/gauge/index.ts'
import { computeProbe, fieldOf, nameOfProbeField, withProbeUnit } from '../../../renderer/probe/compute-probe.ts'
import { keptProbe } from '../../../renderer/probe/probe-draft.ts'
import { filledFor } from '../../../renderer/probe/filled-for.ts'
import { gaugeFromLog, gaugeFromProbe } from '../../../renderer/probe/filled-gauge.ts'
import { newProbe, openProbe, probeOnSheet, probeReducer, setupOnSheet, withOffsets, withPressures, withProbe, type ProbeAction } from '../../../renderer/probe/probe-form.ts'
import { withoutSource } from '../../../renderer/probe/source-lines.tsx'
import { snapshotFrom } from '../../../renderer/gauge/snapshot-of-sheet.ts'
import { sheetOfSnapshot } from '../../../renderer/gauge/sheet-of-snapshot.ts'
import { usualUnits } from '../../../renderer/gauge/usual-units.ts'
import { probeIn } from '../../support/forward-probe.ts'
import { PRODUCTS, TANKS } from '../a-yard.ts'

const tank = TANKS[0]!
const { capacityTable: _, ...reading } = probeIn({ layers: [{ to: 20, rho: 840 }], level: 7, heights: [0.1, 3, 6, 9, 11.5] })
const filled = withProbe(newProbe('T-101'), reading, new Map([['M4', '0.012 kPa']]))
const after = (...actions: readonly ProbeAction[]) => actions.reduce(probeReducer, openProbe(newProbe('T-101')))

describe('the sheet of a probe', () => {
  it('begins with six modules and no value', () => expect(probeOnSheet(newProbe('T-101'))).toMatchObject({ gravity: '', modules: [{ name: 'M1', height: '' }, {}, {}, {}, {}, { name: 'M6', pressure: '' }] }))
  it('takes a reading from a file, and the offsets that stand in the ledger', () => {
    expect(filled.modules.map(({ offset }) => offset)).toEqual(['', '', '', '0.012 kPa', ''])
    expect(withOffsets(filled, new Map([['M1', '0.001 kPa']])).modules[0]?.offset).toBe('0.001 kPa')
  })
  it('leaves out what is empty', () => expect(probeOnSheet(filled)).toEqual({ ...reading, modules: reading.modules.map((module, i) => (i === 3 ? { ...module, offset: '0.012 kPa' } : module)) }))
  it('adds up to twelve modules and drops any', () => {
    const many = after(...Array.from({ length: 9 }, (): ProbeAction => ({ do: 'add-module' })))
    expect(many.present.modules).toHaveLength(12)
    expect(probeReducer(many, { do: 'drop-module', at: 0 }).present.modules[0]?.name).toBe('M2')
  })
  it('undoes an edit as one step', () => {
    const edited = after({ do: 'write-module', at: 1, field: 'pressure', value: '8' }, { do: 'write-module', at: 1, field: 'pressure', value: '84 kPa' })
    expect(probeReducer(edited, { do: 'undo' }).present).toEqual(newProbe('T-101'))
    expect(probeReducer(probeReducer(edited, { do: 'undo' }), { do: 'redo' }).present.modules[1]?.pressure).toBe('84 kPa')
  })
  it('gives a bare number the usual unit of its field', () => {
    const units = usualUnits(tank, PRODUCTS[0])
    expect((['height', 'pressure', 'gravity', 'bulgingCoefficient', 'name'] as const).map((field) => withProbeUnit('3', field, units))).toEqual(['3 mm', '3 kPa', '3 m/s2', '3 /kPa', '3'])
    expect(withProbeUnit('84 psi', 'pressure', units)).toBe('84 psi')
  })
})

describe('the sheet of a probe at a moment of a gauge log', () => {
  const read = (count: number) => Array.from({ length: count }, (_, i) => ({ pressure: `${90 - 20 * i} kPa`, temperature: '21 °C' }))
  const told = withPressures({ ...filled, at: '2026-03-13 06:10', by: 'M. Duarte' }, read(5), '2026-03-14 06:10', null)
  it('has the pressures, the temperatures and the time of the moment, and no reader', () => {
    expect(told.modules.map(({ pressure, temperature }) => ({ pressure, temperature }))).toEqual(read(5))
    expect([told.at, told.by]).toEqual(['2026-03-14 06:10', ''])
  })
  it('keeps names, heights, offsets and settings', () => {
    const fixed = (form: typeof filled) => form.modules.map(({ name, height, offset }) => [name, height, offset])
    expect(fixed(told)).toEqual(fixed(filled))
    expect(told.settings).toEqual(filled.settings)
  })
  it('a new sheet gets as many modules as were read; their heights are still needed', () => {
    const { modules } = withPressures(newProbe('T-101'), read(4), '2026-03-14 06:10', null)
    expect(modules.map(({ name, height }) => [name, height])).toEqual([['M1', ''], ['M2', ''], ['M3', ''], ['M4', '']])
    expect(withPressures(newProbe('T-101'), read(7), '', null).modules[6]).toEqual({ name: 'M7', height: '', pressure: '-30 kPa', temperature: '21 °C', offset: '' })
  })
  it('a module that has a height, but was not read, does not keep the pressure of another time', () => {
    expect(withPressures(filled, read(4), '', null).modules[4]).toMatchObject({ height: filled.modules[4]?.height, pressure: '', temperature: '' })
    expect(computeProbe(withPressures(filled, read(4), '', null), tank).missing).toEqual(['probe.modules.4.pressure', 'probe.modules.4.temperature'])
  })
  it('is the one that is kept for the tank, or a new one', () => {
    const draft = { id: 'probe-T-101', kind: 'probe' as const, title: 'Probe T-101', savedAt: '2026-03-14T06:00:00Z', body: filled }
    expect(keptProbe([draft], 'T-101')).toEqual(filled)
    expect([keptProbe([draft], 'T-102'), keptProbe([{ ...draft, body: { tank: 'T-101' } }], 'T-101')]).toEqual([newProbe('T-102'), newProbe('T-101')])
  })
})

describe('what a sheet says of a probe without a reading', () => {
  it('is its heights and settings, as soon as they are all there', () => {
    expect(setupOnSheet(newProbe('T-101'))).toBeUndefined()
    expect(setupOnSheet({ ...filled, modules: filled.modules.with(1, { ...filled.modules[1]!, height: ' ' }) })).toBeUndefined()
    const { modules, ...settings } = probeOnSheet(filled)
    expect(setupOnSheet({ ...filled, modules: filled.modules.map((module) => ({ ...module, pressure: '' })) })).toEqual({ ...settings, modules: modules.map(({ pressure: _p, temperature: _t, ...module }) => module) })
  })
  it('makes a gauge of a line of a log that has pressures alone, raw readings and all', () => {
    const setup = setupOnSheet(filled)!
    const lines = [0, 5, 10, 15, 20].map((minute, i) => ({ line: i + 2, at: `2026-03-14T06:${String(minute).padStart(2, '0')}:00Z`, tank: 'T-101', ambient: '11 degC', modules: filled.modules.map(({ pressure, temperature }) => ({ pressure, temperature })) }))
    const { log, computed } = withProbeLevels({ file: 'log.csv', lines }, 'T-101', setup)
    const gauge = gaugeFromLog(log, 6, { tank, setup, computed, zone: 'Europe/Lisbon' })
    expect(gauge).toMatchObject({ at: '2026-03-14 06:20', level: '7000 mm', density: '840.0 kg/m3', instrument: 'probe', ambient: '11 degC', waterCut: '', readBy: 'tape', log: { line: 6 } })
    expect(gauge?.probe?.modules.map(({ pressure }) => pressure)).toEqual(filled.modules.map(({ pressure }) => pressure))
    expect(gauge?.log?.levels.map(({ level }) => level)).toEqual(Array(5).fill('7000 mm'))
  })
})

describe('what is computed from it', () => {
  it('empty fields are still needed, not wrong', () => {
    const { findings, missing, profile } = computeProbe(newProbe('T-101'), tank)
    expect([findings, profile]).toEqual([[], undefined])
    expect(missing).toContain('probe.modules.0.height')
  })
  it('a filled sheet gives its profile', () => expect(computeProbe(filled, tank).profile?.level.value).toBe('7000'))
  it('what is wrong stands at its field, by its name', () => {
    const wrong = { ...filled, modules: filled.modules.map((module, i) => (i === 1 ? { ...module, pressure: 'high' } : module)) }
    expect(computeProbe(wrong, tank).findings).toMatchObject([{ field: 'probe.modules.1.pressure', message: expect.stringMatching(/^M2: pressure: “high” cannot be read/) }])
  })
  it.each([
    ['probe.modules.2', 'probe.modules.2.pressure'], ['probe.modules', 'probe.modules.0.pressure'], ['probe.bulging.tableDensity', 'probe.bulgingTableDensity'], ['probe.gravity', 'probe.gravity'],
  ])('%s belongs to %s', (path, field) => expect(fieldOf(path)).toBe(field))
  it('settings have names for people', () => expect(nameOfProbeField(filled, 'probe.zeroLimit')).toBe('Zero limit'))
})

describe('a gauge sheet filled from a probe', () => {
  const { profile, probe } = computeProbe(filled, tank)
  const gauge = gaugeFromProbe(profile!, probe, { at: '2026-03-14 06:10', by: 'M. Duarte', log: null }, 'UTC')!
  it('says the probe\'s figures and nothing that the probe cannot know', () => expect(gauge).toMatchObject({ level: '7000 mm', density: '840.0 kg/m3', instrument: 'probe', waterCut: '', ambient: '', sedimentAndWater: '' }))
  it('hands the raw readings on to the snapshot, and back', () => {
    const { snapshot } = snapshotFrom({ ...gauge, probe: { ...gauge.probe!, sample: 'S-7' } }, 'T-101', 'CRUDE', 'Europe/Lisbon')
    expect(snapshot.probe?.sample).toBe('S-7')
    expect(sheetOfSnapshot(snapshot, 'Europe/Lisbon').probe).toEqual({ ...probe, sample: 'S-7' })
    expect(snapshotFrom(gauge, 'T-101', 'CRUDE', 'Europe/Lisbon').snapshot.probe).not.toHaveProperty('sample')
  })
  it('takes where it stood in a log with it, as long as its time is that of the log', () => {
    const log = { file: 'log.csv', line: 7, levels: [{ at: '2026-03-14T06:10:00Z', level: '7001 mm' }] }
    const at = (time: string) => gaugeFromProbe(profile!, probe, { at: time, by: '', log }, 'Europe/Lisbon')?.log
    expect([at('2026-03-14 06:10'), at('2026-03-14 06:15')]).toEqual([log, null])
    expect(withPressures(filled, filled.modules, '2026-03-14 06:10', log).log).toEqual(log)
    expect(withProbe(withPressures(filled, filled.modules, '', log), probe, new Map()).log).toBeNull()
  })
  it('keeps its figures when the probe is taken off', () => expect(withoutSource(gauge)).toMatchObject({ probe: null, level: '7000 mm', instrument: 'density-meter' }))
})

describe('where a page fills its figures in', () => {
  it.each([
    [{ tank: 'T-101' }, undefined], [{ draft: '' }, undefined], [{ draft: 'd', gauge: 'closing' }, { draft: 'd', gauge: 'closing' }], [{ draft: 'd', gauge: 'other' }, { draft: 'd', gauge: 'opening' }],
  ])('%o', (query, expected) => expect(filledFor({ job: 'gauge', rest: ['probe'], query })).toEqual(expected))
})
