import { describe, expect, it } from 'vitest'
import {
  BANDS, densityRange, densityRange1980, expansion1980, factorsAt, findBaseLiquid, GROUPS, MOST_PASSES, MOST_PASSES_1980, NEAR_ENOUGH, searchBase1980, searchBaseDensity,
  vcf1980, ZONES_1980, type BaseLiquid, type Group, type System,
} from '../../../core/volume-correction/index.ts'
import { chance } from '../../support/chance.ts'
import { must } from '../../support/must.ts'

/** A repeatable run of points, each coordinate between two ends. */
function points(seed: number): (from: number, to: number) => number {
  const next = chance(seed)
  return (from, to) => from + ((to - from) * next(1_000_000_000)) / 1_000_000_000
}

// API MPMS 11.1-2004, 11.1.6.2: at most 15 passes, to 10⁻⁶ kg/m³
describe('the search for a base density by the equations of 2004', () => {
  it('finds one in at most 15 passes at each of 100,000 points of all groups that have one, or says why not', () => {
    const between = points(2004)
    const ends = { found: 0, 'below-range': 0, 'above-range': 0, 'not-converged': 0 }
    let most = 0
    for (let point = 0; point < 100_000; point += 1) {
      const group = GROUPS[point % 4] ?? 'crude'
      const { from, to } = densityRange(group)
      const t = between(-58, 302)
      const P = between(0, 1500)
      const alpha60 = group === 'special' ? between(230e-6, 930e-6) : null
      const search = searchBaseDensity({ commodity: group, alpha60 }, between(from - 60, to + 60), t, P)
      ends[search.end] += 1
      most = Math.max(most, search.passes)
      if (search.end === 'not-converged') expect(group).toBe('special') // as the docstring of the search says
      if (search.end === 'found') expect(search.rho60 >= from && search.rho60 <= to).toBe(true)
    }
    expect(NEAR_ENOUGH).toBe(1e-6)
    expect(most).toBeLessThanOrEqual(MOST_PASSES)
    expect(ends.found).toBeGreaterThan(75_000)
    expect(ends['not-converged']).toBeLessThan(100)
  })

  it('finds every density that the equations themselves give for crude, refined products and lubricating oils', () => {
    const between = points(11)
    for (let point = 0; point < 3000; point += 1) {
      const group = (['crude', 'refined', 'lube'] as const)[point % 3] ?? 'crude'
      const { from, to } = densityRange(group)
      const liquid = at60(group, between(from + 0.01, to - 0.01))
      const [t, P] = [between(-58, 302), between(0, 1500)]
      const search = searchBaseDensity(liquid, factorsAt(liquid, t, P).density, t, P)
      expect(search.end).toBe('found')
      expect(search.end === 'found' ? Math.abs(search.rho60 - liquid.density60) : 1).toBeLessThan(3e-6)
    }
  })
})

function at60(group: Group, rho: number): BaseLiquid {
  return must(findBaseLiquid({ commodity: group, baseTemperature: '60 degF', density: { value: `${rho.toFixed(9)} kg/m3` } }, { density: 'density', alpha: 'alpha' })).liquid
}

const SPANS: { readonly [S in System]: readonly [number, number] } = { '60 degF': [-100, 242], '15 degC': [-55, 135] }

// ASTM D1250-80: no number of passes was read; ours are counted
describe('the search for a base density by the tables of 1980', () => {
  it('finds every one of 100,000 densities of all groups and both systems in at most 9 passes', () => {
    const between = points(1980)
    let most = 0
    for (let point = 0; point < 100_000; point += 1) {
      const system: System = point % 2 === 0 ? '60 degF' : '15 degC'
      const group = GROUPS[Math.floor(point / 2) % 4] ?? 'crude'
      const { from, to } = densityRange1980(group, system)
      const rho = between(from + 0.2, to - 0.2)
      const given = group === 'special' ? between(270e-6, 930e-6) * (system === '15 degC' ? 1.8 : 1) : null
      const zone = ZONES_1980[system].find((one) => one.group === group && rho >= one.from)
      if (zone === undefined) throw new Error('no zone')
      const dt = between(...SPANS[system])
      const search = searchBase1980(group, given, system, rho * vcf1980(given ?? expansion1980(zone, rho), dt), dt)
      expect(search.end).toBe('found')
      // half of 10⁻⁷ of α over the widest span, half of 10⁻⁶ of VCF; a step of α at the border of a zone
      expect(search.end === 'found' ? Math.abs(search.rho - rho) : 1).toBeLessThan(0.25)
      most = Math.max(most, search.passes)
    }
    expect(most).toBeLessThanOrEqual(9)
    expect(most).toBeLessThan(MOST_PASSES_1980)
  })
})

describe('the zones of refined products', () => {
  /** Largest step of CTL across a border, over the whole range of temperatures, in hundred-thousandths. */
  function step(border: number): number {
    const [below, above] = [at60('refined', border - 1e-9), at60('refined', border + 1e-9)]
    const steps = Array.from({ length: 361 }, (_, i) => i - 58).map((t) => Math.abs(factorsAt(below, t, 0).ctl - factorsAt(above, t, 0).ctl))
    return Math.max(...steps) * 1e5
  }

  it.each([
    // measured: how far the standard's own zones are apart at their borders
    ['fuel oil | jet fuel', 838.3127, 0.01], ['jet fuel | transition', 787.5195, 0.01], ['transition | gasoline', 770.352, 0.15],
  ])('of 2004 meet at %s, %d kg/m³, within %d × 10⁻⁵', (_, border, most) => {
    expect(BANDS.some((band) => band.from === border)).toBe(true)
    expect(step(border)).toBeLessThan(most)
  })

  it.each([['60 degF', 2, 1.2e-6], ['15 degC', 3, 1.4e-6]] as const)('of 1980 to %s meet within a small step of α', (system, _, most) => {
    const zones = ZONES_1980[system].filter((zone) => zone.group === 'refined')
    for (const [index, lighter] of zones.entries()) {
      const heavier = zones[index - 1]
      if (heavier === undefined) continue
      expect(lighter.to).toBe(heavier.from)
      expect(Math.abs(expansion1980(heavier, heavier.from) - expansion1980(lighter, heavier.from))).toBeLessThan(most)
    }
  })

  it('α falls as the density rises, within every zone of both editions', () => {
    const between = points(7)
    for (let point = 0; point < 20_000; point += 1) {
      for (const system of ['60 degF', '15 degC'] as const) {
        const zone = ZONES_1980[system][point % 6]
        if (zone === undefined || zone.group === 'special') continue
        const [one, other] = [between(zone.from, zone.to), between(zone.from, zone.to)]
        if (Math.abs(one - other) < 1e-3) continue
        expect(expansion1980(zone, Math.max(one, other))).toBeLessThan(expansion1980(zone, Math.min(one, other)))
      }
    }
  })
})
