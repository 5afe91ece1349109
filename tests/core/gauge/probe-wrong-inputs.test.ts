import { describe, expect, it } from 'vitest'
import { probeProfile, type ProbeInput } from '../../../core/gauge/index.ts'
import { sourceKeyOf, SOURCES } from '../../../core/sources.ts'
import { CYLINDER, probeIn, SIX } from '../../support/forward-probe.ts'

const good = probeIn({ layers: [{ to: 20, rho: 800 }], level: 10, heights: SIX })
const module = (i: number, parts: Partial<ProbeInput['modules'][number]>): ProbeInput => ({ ...good, modules: good.modules.map((one, k) => (k === i ? { ...one, ...parts } : one)) })
const swapped = [good.modules[0]!, good.modules[2]!, good.modules[1]!, ...good.modules.slice(3)]
const water = { waterThreshold: '985 kg/m3', waterDensity: '1000 kg/m3' }

describe('wrong probes are refused, each at its place', () => {
  it.each<readonly [says: string, input: ProbeInput, code: string, path: string]>([
    ['free fall without a unit', { ...good, gravity: '9.81' }, 'unreadable-value', 'gravity'],
    ['free fall of another planet', { ...good, gravity: '3.7 m/s2' }, 'out-of-range', 'gravity'],
    ['free fall in feet', { ...good, gravity: '32.17 ft/s2' }, 'unit-not-accepted', 'gravity'],
    ['a vapour as heavy as a liquid', { ...good, vapourDensity: '700 kg/m3' }, 'out-of-range', 'vapourDensity'],
    ['a vapour of less than nothing', { ...good, vapourDensity: '-1 kg/m3' }, 'out-of-range', 'vapourDensity'],
    ['air as heavy as propane', { ...good, airDensity: '1.9 kg/m3' }, 'out-of-range', 'airDensity'],
    ['air without a unit', { ...good, airDensity: '1.2' }, 'unreadable-value', 'airDensity'],
    ['a zero of the probe far below the tank', { ...good, datumOffset: '-9 m' }, 'out-of-range', 'datumOffset'],
    ['a zero of the probe that puts a module below datum', { ...good, datumOffset: '-300 mm' }, 'out-of-range', 'modules.0.height'],
    ['modules out of order', { ...good, modules: swapped }, 'out-of-range', 'modules.2.height'],
    ['two modules at one height', module(3, { height: good.modules[2]!.height }), 'out-of-range', 'modules.3.height'],
    ['two modules of one name', module(2, { name: 'M1' }), 'already-on-record', 'modules.2.name'],
    ['two modules only', { ...good, modules: good.modules.slice(4) }, 'out-of-range', 'modules'],
    ['a height in words', module(1, { height: 'three metres' }), 'unreadable-value', 'modules.1.height'],
    ['a pressure that cannot be read', module(2, { pressure: 'high' }), 'unreadable-value', 'modules.2.pressure'],
    ['a pressure with a comma', module(2, { pressure: '31,5 kPa' }), 'unreadable-value', 'modules.2.pressure'],
    ['a temperature in kelvin', module(0, { temperature: '293 K' }), 'unit-not-accepted', 'modules.0.temperature'],
    ['a temperature of molten lead', module(0, { temperature: '330 degC' }), 'out-of-range', 'modules.0.temperature'],
    ['an offset without a unit', module(0, { offset: '0.01' }), 'unreadable-value', 'modules.0.offset'],
    ['an uncertainty of nothing', { ...good, pressureUncertainty: '0 kPa' }, 'out-of-range', 'pressureUncertainty'],
    ['a zero limit below nothing', { ...good, zeroLimit: '-0.03 kPa' }, 'out-of-range', 'zeroLimit'],
    ['a threshold as light as vapour', { ...good, waterThreshold: '9 kg/m3' }, 'out-of-range', 'waterThreshold'],
    ['the water\'s density without a threshold', { ...good, waterDensity: '1000 kg/m3' }, 'missing-value', 'waterThreshold'],
    ['water lighter than its threshold', { ...good, waterThreshold: '985 kg/m3', waterDensity: '980 kg/m3' }, 'out-of-range', 'waterDensity'],
    ['a dry product as heavy as water', { ...good, dryDensity: '998 kg/m3' }, 'out-of-range', 'dryDensity'],
    ['a shell of rubber', { ...good, bulging: { coefficient: '0.01 /kPa' } }, 'out-of-range', 'bulging.coefficient'],
    ['bulging per degree', { ...good, bulging: { coefficient: '0.000004 /degC' } }, 'unit-not-accepted', 'bulging.coefficient'],
    ['a roof of a gram', { ...good, roofMass: '0.001 kg' }, 'out-of-range', 'roofMass'],
    ['a tank emptied below the second module', probeIn({ layers: [{ to: 20, rho: 800 }], level: 2, heights: SIX }), 'out-of-range', 'modules'],
    ['an empty tank', probeIn({ layers: [{ to: 20, rho: 800 }], level: 0, heights: SIX }), 'out-of-range', 'modules'],
    ['the highest module covered', probeIn({ layers: [{ to: 20, rho: 800 }], level: 10, heights: [0.1, 3, 6, 9] }), 'out-of-range', 'modules'],
    ['a module that reads the atmosphere though one above it is covered', module(2, { pressure: '0.2 kPa' }), 'out-of-range', 'modules.3.pressure'],
    ['a module in millibars taken for kilopascals', module(0, { pressure: '779 kPa' }), 'out-of-range', 'modules.0'],
    ['a level outside the capacity table', { ...good, capacityTable: { ...CYLINDER, rows: [['0', '0'], ['8000', '4000']] } }, 'level-outside-table', 'modules'],
    ['water up to the surface and its density', { ...probeIn({ layers: [{ to: 20, rho: 1000 }], level: 5, heights: [0.1, 3, 19] }), ...water }, 'out-of-range', 'waterThreshold'],
    ['a bottom heavier than the water', { ...probeIn({ layers: [{ to: 3, rho: 1030 }, { to: 20, rho: 800 }], level: 10, heights: SIX }), ...water }, 'out-of-range', 'waterDensity'],
  ])('%s', (_, input, code, path) => {
    const outcome = probeProfile(input)
    expect(outcome.ok).toBe(false)
    if (outcome.ok) return
    expect(outcome.findings.map((finding) => [finding.code, finding.path])).toContainEqual([code, path])
    for (const finding of outcome.findings) {
      expect(finding.limit).not.toBe('')
      expect(Object.keys(SOURCES)).toContain(sourceKeyOf(finding.clause))
    }
  })

  it('all at once: gravity, a pressure, a temperature and the limit', () => {
    const outcome = probeProfile({ ...module(2, { pressure: 'high', temperature: 'warm' }), gravity: '9.81', zeroLimit: '0 kPa' })
    expect(outcome.ok ? [] : outcome.findings.map(({ path }) => path)).toEqual(['gravity', 'zeroLimit', 'modules.2.pressure', 'modules.2.temperature'])
  })
})
