import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { degF, parseTemperature } from '../../../core/units/index.ts'
import {
  BASE_TEMPERATURES, GROUPS, correctVolume, factorsAt, findBaseLiquid,
  type BaseLiquid, type BaseTemperature, type Group, type FoundLiquid,
} from '../../../core/volume-correction/index.ts'
import { must } from '../../support/must.ts'

/** Every run sees the same points. */
const SEED = 11_1_2004

/** Lightest and heaviest density at 60 °F of a group [kg/m³]. MPMS 11.1-2004, 11.1.3 */
const RANGE: { readonly [C in Group]: readonly [number, number] } = { crude: [610.6, 1163.5], refined: [610.6, 1163.5], lube: [800.9, 1163.5], special: [610.6, 1163.5] }

const commodity = fc.constantFrom(...GROUPS)
const base = fc.constantFrom(...BASE_TEMPERATURES)
const share = fc.double({ min: 0, max: 1, noNaN: true })
const temperature = fc.double({ min: -58, max: 302, noNaN: true })
const pressure = fc.oneof(fc.constant(0), fc.double({ min: 0, max: 1500, noNaN: true }))
const alpha = fc.integer({ min: 2300, max: 9300 }).map((tenMillionths) => `0.000${String(tenMillionths).padStart(4, '0')} /degF`)

/** A double as plain digits, as a person could write it. */
function digits(value: number): string {
  return value.toFixed(9)
}

function find(group: Group, given: string, density: { value: string; temperature?: string; pressure?: string }, baseTemperature: BaseTemperature) {
  return findBaseLiquid({ commodity: group, density, baseTemperature, ...(group === 'special' ? { alpha: given } : {}) }, { density: 'density', alpha: 'alpha' })
}

function found(...parts: Parameters<typeof find>): FoundLiquid {
  return must(find(...parts))
}

/** A liquid of a group, at a share of the way through the group's range; a hair inside it. */
function liquidOf(group: Group, given: string, at: number, baseTemperature: BaseTemperature): BaseLiquid {
  const [from, to] = RANGE[group]
  return found(group, given, { value: `${digits((from + at * (to - from)) / 999.016)} RD` }, baseTemperature).liquid
}

/** Inside the range by a margin: its ends written in another unit may fall outside by the last digit. */
const inside = share.map((at) => 0.0001 + 0.9998 * at)

describe('CTL', () => {
  it('falls as the temperature rises, in every group and zone', () => {
    fc.assert(fc.property(commodity, alpha, inside, base, temperature, temperature, (group, given, at, baseTemperature, one, other) => {
      fc.pre(Math.abs(one - other) > 1e-6)
      const liquid = liquidOf(group, given, at, baseTemperature)
      expect(factorsAt(liquid, Math.max(one, other), 0).ctl).toBeLessThan(factorsAt(liquid, Math.min(one, other), 0).ctl)
    }), { seed: SEED, numRuns: 3000 })
  })

  it('is 1 at the base temperature, to the twelfth decimal', () => {
    fc.assert(fc.property(commodity, alpha, inside, base, (group, given, at, baseTemperature) => {
      const t = parseTemperature(baseTemperature, 'base')
      const ctl = factorsAt(liquidOf(group, given, at, baseTemperature), t.ok ? degF(t.value) : 0, 0).ctl
      // 60 °F on IPTS-68 is printed in the standard to seven decimals, so that CTL(60 °F) is 1 but for 1e-10
      expect(Math.abs(ctl - 1)).toBeLessThan(baseTemperature === '60 degF' ? 1e-10 : 1e-12)
    }), { seed: SEED, numRuns: 1000 })
  })

  it('chains through 60 °F: CTL(60 → Tb) × CTL(Tb → t) = CTL(60 → t)', () => {
    fc.assert(fc.property(commodity, alpha, inside, base, temperature, (group, given, at, baseTemperature, t) => {
      const from60 = factorsAt(liquidOf(group, given, at, '60 degF'), t, 0).ctl
      const fromBase = liquidOf(group, given, at, baseTemperature)
      expect(fromBase.ctlToBase * factorsAt(fromBase, t, 0).ctl).toBeCloseTo(from60, 13)
    }), { seed: SEED, numRuns: 2000 })
  })
})

describe('CPL', () => {
  it('is 1 at no pressure, never below, and grows with pressure', () => {
    fc.assert(fc.property(commodity, alpha, inside, temperature, pressure, pressure, (group, given, at, t, one, other) => {
      const liquid = liquidOf(group, given, at, '60 degF')
      const [low, high] = [Math.min(one, other), Math.max(one, other)]
      expect(factorsAt(liquid, t, 0).cpl).toBe(1)
      expect(factorsAt(liquid, t, low).cpl).toBeGreaterThanOrEqual(1)
      if (high - low > 1e-6) expect(factorsAt(liquid, t, high).cpl).toBeGreaterThan(factorsAt(liquid, t, low).cpl)
    }), { seed: SEED, numRuns: 3000 })
  })

  it('takes a pressure below the atmosphere as none', () => {
    const liquid = liquidOf('crude', '', 0.4, '60 degF')
    expect(factorsAt(liquid, 88.3, -7.3)).toEqual(factorsAt(liquid, 88.3, 0))
  })

  it('does not depend on the base temperature', () => {
    fc.assert(fc.property(commodity, alpha, inside, base, temperature, pressure, (group, given, at, baseTemperature, t, P) => {
      expect(factorsAt(liquidOf(group, given, at, baseTemperature), t, P).cpl).toBe(factorsAt(liquidOf(group, given, at, '60 degF'), t, P).cpl)
    }), { seed: SEED, numRuns: 1000 })
  })
})

describe('observed density → base density', () => {
  /** Where compression by 1500 psi of a hot, light special application outweighs its density, two base densities give one observed density. */
  it('gives back the base density that the observation came from', () => {
    fc.assert(fc.property(fc.constantFrom('crude', 'refined', 'lube'), inside, base, temperature, pressure, (group, at, baseTemperature, t, P) => {
      const liquid = liquidOf(group, '', at, baseTemperature)
      const written = [digits(t), digits(P)] as const
      const observed = factorsAt(liquid, Number(written[0]), Number(written[1])).density
      const back = found(group, '', { value: `${observed} kg/m3`, temperature: `${written[0]} degF`, pressure: `${written[1]} psi` }, baseTemperature)
      expect(Math.abs(back.liquid.baseDensity - liquid.baseDensity)).toBeLessThan(3e-6)
    }), { seed: SEED, numRuns: 5000 })
  })

  it('ends within 15 passes or is refused by name, at 20,000 points of all groups, in and out of range', () => {
    const ends = { found: 0, refused: 0, mostPasses: 0 }
    fc.assert(fc.property(commodity, alpha, fc.double({ min: 300, max: 1400, noNaN: true }), temperature, pressure, base, (group, given, rho, t, P, baseTemperature) => {
      const [value, at, under] = [digits(rho), digits(t), digits(P)]
      const outcome = find(group, given, { value: `${value} kg/m3`, temperature: `${at} degF`, pressure: `${under} psi` }, baseTemperature)
      if (!outcome.ok) {
        ends.refused += 1
        expect(outcome.findings.map((finding) => finding.code)).toHaveLength(1)
        expect(['density-outside-group', 'density-not-converged']).toContain(outcome.findings[0]?.code)
        return
      }
      ends.found += 1
      ends.mostPasses = Math.max(ends.mostPasses, outcome.value.passes)
      expect(outcome.value.passes).toBeLessThanOrEqual(15)
      const { liquid } = outcome.value
      expect(Math.abs(factorsAt(liquid, Number(at), Number(under)).density - Number(value))).toBeLessThan(1.001e-6)
      expect(liquid.density60).toBeGreaterThanOrEqual(RANGE[group][0])
      expect(liquid.density60).toBeLessThanOrEqual(RANGE[group][1])
    }), { seed: SEED, numRuns: 20_000 })
    expect(ends.found).toBeGreaterThan(5000)
    expect(ends.refused).toBeGreaterThan(5000)
    expect(ends.mostPasses).toBeGreaterThan(2)
  })

  it('crosses the zones of refined products without a gap: every density between 760 and 850 kg/m³ is found', () => {
    fc.assert(fc.property(fc.double({ min: 760, max: 850, noNaN: true }), temperature, pressure, (rho60, t, P) => {
      const liquid = found('refined', '', { value: `${digits(rho60)} kg/m3` }, '60 degF').liquid
      const observed = factorsAt(liquid, Number(digits(t)), Number(digits(P))).density
      const outcome = find('refined', '', { value: `${observed} kg/m3`, temperature: `${digits(t)} degF`, pressure: `${digits(P)} psi` }, '60 degF')
      expect(outcome.ok).toBe(true)
    }), { seed: SEED, numRuns: 5000 })
  })
})

describe('a base density that was stated', () => {
  it('stays as stated to the last digit, whatever the base temperature', () => {
    fc.assert(fc.property(fc.integer({ min: 62_000, max: 115_000 }), base, (hundredths, baseTemperature) => {
      const value = `${Math.floor(hundredths / 100)}.${String(hundredths % 100).padStart(2, '0')}`
      const outcome = correctVolume({ commodity: 'crude', density: { value: `${value} kg/m3` }, baseTemperature, temperature: baseTemperature })
      expect(outcome.ok && outcome.value.unrounded.baseDensity).toBe(Number(value))
      const tenths = Math.floor((hundredths + 5) / 10)
      expect(outcome.ok && outcome.value.baseDensity.value).toBe(`${Math.floor(tenths / 10)}.${tenths % 10}`)
    }), { seed: SEED, numRuns: 1000 })
  })
})
