import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { probeProfile, type ProbeInput, type ProbeProfile } from '../../../core/gauge/index.ts'

/**
 * A forward model from physics alone: p(h) = ptop + ρv g (htop − L) + ∫ρ g dz from h to L; no code of core is used.
 * Hydrostatic equation: dp/dz = −ρ g.
 */
const G = 9.80665
interface Layer { readonly to: number; readonly rho: number }

function pressureAt(h: number, layers: readonly Layer[], level: number, top: number, rhoV: number, pTop: number): number {
  if (h >= level) return pTop + rhoV * G * (top - h)
  let p = pTop + rhoV * G * (top - level)
  let lower = 0
  for (const layer of layers) {
    const from = Math.max(lower, h)
    const to = Math.min(layer.to, level)
    if (to > from) p += layer.rho * G * (to - from)
    lower = layer.to
  }
  return p
}

/** A cylinder of 500 m² and 20 m: 0.5 m³ per mm, so that volumes are known by hand. */
const TABLE: ProbeInput['capacityTable'] = {
  certificate: 'CAL-1', issuedBy: 'Calibration office', issuedOn: '2026-01-10', baseTemperature: '15 degC', volumeUnit: 'm3', levelUnit: 'mm',
  rows: [['0', '0'], ['10000', '5000'], ['20000', '10000']],
}

function probeIn(layers: readonly Layer[], level: number, heights: readonly number[], noise: (i: number) => number = () => 0): ProbeInput {
  const top = heights[heights.length - 1]!
  return {
    modules: heights.map((h, i) => ({ name: `M${i + 1}`, height: `${h} m`, pressure: `${((pressureAt(h, layers, level, top, 1.2, 200) + noise(i)) / 1000).toFixed(7)} kPa`, temperature: '20 degC' })),
    gravity: '9.80665 m/s2', vapourDensity: '1.2 kg/m3', capacityTable: TABLE, pressureUncertainty: '0.010 kPa', zeroLimit: '0.030 kPa',
  }
}

function profileOf(input: ProbeInput): ProbeProfile {
  const outcome = probeProfile(input)
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.findings))
  return outcome.value
}

const SIX = [0.1, 3, 6, 9, 12, 19]

describe('a uniform liquid of 800 kg/m³, 10 m deep (worked by hand from dp/dz = −ρg)', () => {
  const profile = profileOf(probeIn([{ to: 10, rho: 800 }], 10, SIX))
  it('has its level, mass and volume', () => {
    expect(profile.level).toEqual({ value: '10000', unit: 'mm' })
    expect(profile.massFromTable.value).toBe('4000000')
    expect(profile.massFromHead.value).toBe('4000000')
    expect(profile.volumeFromTable).toEqual({ value: '5000.000', unit: 'm3' })
    expect(profile.volumeDifference.value).toBe('0.000')
  })
  it('has the same density in every stratum', () => expect(profile.strata.map((s) => s.density.value)).toEqual(['800.0', '800.0', '800.0']))
  it('checks the zero of the emerged module', () => expect(profile.zeroChecks).toEqual([{ module: 'M5', offset: { value: '0.000', unit: 'kPa' }, limit: { value: '0.030', unit: 'kPa' }, within: true }]))
})

describe('strata', () => {
  it('six modules, all but the highest covered, give four', () => expect(profileOf(probeIn([{ to: 15, rho: 850 }], 15, SIX)).strata).toHaveLength(4))
  it('twelve give ten', () => expect(profileOf(probeIn([{ to: 11.2, rho: 850 }], 11.2, [0.1, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12])).strata).toHaveLength(10))
  it('two layers that meet at a module come out as two densities', () => {
    const profile = profileOf(probeIn([{ to: 6, rho: 860 }, { to: 12, rho: 820 }], 11, SIX))
    expect(profile.strata.map((s) => s.density.value)).toEqual(['860.0', '860.0', '820.0'])
    // 6 m × 500 m² × 860 + 5 m × 500 m² × 820
    expect(profile.massFromTable.value).toBe('4630000')
  })
  it('a heavy bottom stratum is free water', () => {
    const profile = profileOf({ ...probeIn([{ to: 3, rho: 998 }, { to: 12, rho: 820 }], 11, SIX), waterThreshold: '985 kg/m3' })
    expect(profile.waterLevel).toEqual({ value: '3000', unit: 'mm' })
    expect(profile.strata.map((s) => s.water)).toEqual([true, false, false])
  })
})

describe('a module that emerged with a wrong zero', () => {
  it('is found dry by the level that the modules below it give, and reported', () => {
    const profile = profileOf(probeIn([{ to: 10, rho: 800 }], 10, SIX, (i) => (i === 4 ? 150 : 0)))
    expect(profile.level.value).toBe('10000')
    expect(profile.zeroChecks[0]).toMatchObject({ module: 'M5', offset: { value: '0.150' }, within: false })
  })
})

describe('entrained water', () => {
  it('is the excess over the dry density, with its uncertainty', () => {
    // 1 % of water (998.2 kg/m³ at 20 °C, MPMS-11.4.1) in 800 kg/m³: 800 + 0.01 × 198.2 = 801.982
    const profile = profileOf({ ...probeIn([{ to: 10, rho: 801.982 }], 10, SIX), dryDensity: '800 kg/m3' })
    expect(Number(profile.entrainedWater?.share.value)).toBeCloseTo(1, 3)
    expect(Number(profile.entrainedWater?.uncertainty.value)).toBeGreaterThan(0)
  })
  it('is absent, not zero, without the dry density', () => expect(profileOf(probeIn([{ to: 10, rho: 800 }], 10, SIX)).entrainedWater).toBeNull())
})

describe('random tanks with noise', () => {
  it('the level comes back within five standard uncertainties, and the mass accordingly', () => {
    fc.assert(fc.property(
      fc.double({ min: 3.5, max: 18, noNaN: true }), fc.double({ min: 650, max: 1000, noNaN: true }),
      fc.array(fc.double({ min: -17, max: 17, noNaN: true }), { minLength: 6, maxLength: 6 }),
      (level, rho, noise) => {
        // noise uniform within ±√3 × 10 Pa has the standard uncertainty of 10 Pa that is stated
        const profile = profileOf({ ...probeIn([{ to: 20, rho }], level, SIX, (i) => noise[i]!), zeroLimit: '0.035 kPa' })
        const u = Number(profile.levelUncertainty.value) / 2
        // a module that is just covered may be taken as emerged, or the reverse, within the zero limit
        expect(Math.abs(Number(profile.level.value) / 1000 - level) * 1000).toBeLessThan(5 * u + 1)
      },
    ), { numRuns: 10_000, seed: 20260901 })
  })
})

describe('wrong probes are refused', () => {
  const good = probeIn([{ to: 10, rho: 800 }], 10, SIX)
  const swapped = [...good.modules]
  ;[swapped[1], swapped[2]] = [swapped[2]!, swapped[1]!]
  it.each([
    ['no unit', { ...good, gravity: '9.81' }, 'unreadable-value', 'gravity'],
    ['gravity of another planet', { ...good, gravity: '3.7 m/s2' }, 'out-of-range', 'gravity'],
    ['modules out of order', { ...good, modules: swapped }, 'out-of-range', 'modules.2.height'],
    ['a tank emptied below the second module', probeIn([{ to: 2, rho: 800 }], 2, SIX), 'out-of-range', 'modules'],
    ['the highest module covered', probeIn([{ to: 20, rho: 800 }], 10, [0.1, 3, 6, 9]), 'out-of-range', 'modules'],
    ['a pressure that cannot be read', { ...good, modules: good.modules.map((m, i) => (i === 2 ? { ...m, pressure: 'high' } : m)) }, 'unreadable-value', 'modules.2.pressure'],
    ['a level outside the capacity table', { ...good, capacityTable: { ...TABLE, rows: [['0', '0'], ['8000', '4000']] } }, 'level-outside-table', 'modules'],
  ] as const)('%s', (_, input, code, path) => {
    const outcome = probeProfile(input as ProbeInput)
    expect(outcome.ok).toBe(false)
    if (!outcome.ok) expect(outcome.findings[0]).toMatchObject({ code, path, clause: expect.any(String), value: expect.any(String), limit: expect.any(String) })
  })
})
