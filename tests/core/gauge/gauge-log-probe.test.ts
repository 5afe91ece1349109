import { describe, expect, it } from 'vitest'
import { pickedFrom, pickGauges, probeLevel, probeProfile, probeSetupSchema, saidOfPressures, withProbeLevels, type GaugeLog, type GaugeSnapshot, type LoggedLine, type ProbeSetup } from '../../../core/gauge/index.ts'
import { staticQuantity } from '../../../core/quantity/index.ts'
import { CYLINDER, probeIn, SIX } from '../../support/forward-probe.ts'
import { findingsOf, must } from '../../support/must.ts'
import { aProduct } from '../../support/snapshots.ts'
import { aTank } from '../../support/tanks.ts'

const tank = aTank({ capacityTable: CYLINDER, referenceGaugeHeight: '21.000 m' })
/** What six modules show at a level [m], from physics alone. */
const shown = (level: number) => probeIn({ layers: [{ to: 20, rho: 840 }], level, heights: SIX })
const { capacityTable: _table, ...first } = shown(10)
const setup: ProbeSetup = probeSetupSchema.parse({ ...first, modules: first.modules.map(({ name, height }) => ({ name, height })) })
const at = (i: number): string => new Date(Date.UTC(2026, 2, 14, 6, i * 5)).toISOString().replace('.000Z', 'Z')
const line = (level: number, i: number): LoggedLine => ({ line: i + 2, at: at(i), tank: 'T-101', modules: shown(level).modules.map(({ pressure, temperature }) => ({ pressure, temperature })) })
/** Still at 4 m, filled to 6 m, still; pressures only. */
const LEVELS = [4, 4, 4, 4, 4, 4, 4.5, 5, 5.5, 6, 6, 6, 6, 6, 6]
const log: GaugeLog = { file: 'probe-log.csv', lines: LEVELS.map(line) }

describe('a log with pressures and no level', () => {
  const levels = withProbeLevels(log, 'T-101', setup)

  it('has the level that physics gives, to the millimetre, at every line', () => {
    expect(levels.findings).toEqual([])
    expect(levels.computed).toEqual(log.lines.map((one) => one.line))
    expect(levels.log.lines.map((one) => one.level)).toEqual(LEVELS.map((level) => `${level * 1000} mm`))
  })

  it('has the level that the probe\'s own profile prints', () => {
    const probe = shown(7.1234)
    expect(must(probeLevel(probe, 'probe'))).toBe(`${must(probeProfile(probe)).level.value} mm`)
  })

  it('says when the tank was still and what moved, where without the probe nothing can be picked', () => {
    expect(must(pickGauges(levels.log, 'T-101')).movements.map(({ kind, opening, closing, change }) => [kind, opening.at, closing.at, change.value])).toEqual([['receipt', at(5), at(13), '2000.0']])
    expect(findingsOf(pickGauges(log, 'T-101'))).toMatchObject([{ code: 'missing-value', limit: 'no line of T-101 has a level, and the heights of its probe are not known' }])
  })

  it('leaves alone a level that stands, other tanks, and an instrument at fault', () => {
    const mixed: GaugeLog = { ...log, lines: [{ ...line(4, 0), level: '3998 mm' }, { ...line(4, 1), tank: 'T-102' }, { ...line(4, 2), status: 'fault' }, line(4, 3)] }
    const { log: after, computed } = withProbeLevels(mixed, 'T-101', setup)
    expect(after.lines.map((one) => one.level)).toEqual(['3998 mm', undefined, undefined, '4000 mm'])
    expect(computed).toEqual([5])
  })

  it('says by its line why pressures give no level', () => {
    const wrong: GaugeLog = { ...log, lines: [
      { ...line(4, 0), modules: line(4, 0).modules!.slice(1) }, { ...line(4, 1), modules: line(4, 1).modules!.with(2, { pressure: 'much', temperature: '20 degC' }) },
      { ...line(4, 2), modules: line(4, 2).modules!.toReversed() }, line(4, 3),
    ] }
    const { findings, computed } = withProbeLevels(wrong, 'T-101', setup)
    expect(findings.map(({ code, path }) => `${code} ${path}`)).toEqual(['out-of-range log.line 2.modules', 'unreadable-value log.line 3.modules.2.pressure', 'out-of-range log.line 4.modules'])
    expect(computed).toEqual([5])
    expect(saidOfPressures({ log: wrong, findings, computed }).without[0]).toEqual({ path: 'log.line 2.modules', message: expect.stringContaining('5 modules') })
  })
})

describe('a snapshot of a probe that was picked from a log', () => {
  const levels = withProbeLevels(log, 'T-101', setup)
  const snapshot = (i: number, parts: Partial<GaugeSnapshot> = {}): GaugeSnapshot => {
    const { capacityTable: _, ...probe } = shown(LEVELS[i]!)
    const profile = must(probeProfile({ ...probe, capacityTable: CYLINDER }))
    return {
      tank: 'T-101', product: 'CRUDE', at: at(i), by: 'M. Duarte', level: { innage: `${profile.level.value} mm` }, waterCut: '0 mm', temperatures: { liquid: '20.00 degC', ambient: '12 degC' },
      density: { value: '840.0 kg/m3', temperature: '20.00 degC', instrument: 'probe' }, sedimentAndWater: '0.20 %', probe: { ...probe, sample: 'S-1' }, log: must(pickedFrom(levels.log, 'T-101', i + 2)), ...parts,
    }
  }
  const worked = (one: GaugeSnapshot) => staticQuantity(tank, aProduct(), one)

  it('carries whether the tank was still', () => {
    const still = must(worked(snapshot(5)))
    expect(still.lines.find(({ symbol }) => symbol === 'dL/dt')).toMatchObject({ value: '0.0', unit: 'mm/h' })
    expect(still.exceptions).toEqual([])
    expect(must(worked(snapshot(7))).exceptions).toMatchObject([{ code: 'gauge-not-settled' }])
  })

  it('may differ from the level of a level gauge in the log, since its own pressures give it; its time may not', () => {
    const gauged = { file: 'log.csv', line: 7, levels: [0, 1, 2, 3, 4, 5].map((i) => ({ at: at(i), level: '4002 mm' })) }
    expect(must(worked(snapshot(5, { log: gauged }))).exceptions).toEqual([])
    expect(findingsOf(worked(snapshot(5, { at: at(6), log: gauged })))).toMatchObject([{ code: 'gauge-differs-from-log', path: 'snapshot.at' }])
    const { probe: _, ...byHand } = snapshot(5, { log: gauged, density: { value: '840.0 kg/m3', instrument: 'base' } })
    expect(findingsOf(worked(byHand))).toMatchObject([{ code: 'gauge-differs-from-log', path: 'snapshot.level.innage' }])
  })
})
