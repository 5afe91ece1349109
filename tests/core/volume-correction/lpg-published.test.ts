import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { z } from 'zod'
import { Decimal, KPA_PER_PSI, WATER_AT_60F } from '../../../core/units/index.ts'
import { compressibilityConstants, lightCompressibility, lightCpl } from '../../../core/volume-correction/lpg-compressibility.ts'
import { lightCtl } from '../../../core/volume-correction/lpg-ctl.ts'
import { gasOf, PARAFFINS } from '../../../core/volume-correction/lpg-gases.ts'
import { vapourZ } from '../../../core/volume-correction/lpg-real-gas.ts'
import { lightCtlFrom } from '../../../core/volume-correction/lpg-tables.ts'
import { GAS_CONSTANT } from '../../../core/volume-correction/lpg-vapour.ts'
import { ATMOSPHERE_PSI } from '../../../core/volume-correction/lpg-limits.ts'
import { vapourPressure } from '../../../core/volume-correction/vapour-pressure.ts'
import { checkPublishedRows, inputOf, type PublishedRow } from '../../support/published-rows.ts'
import { baseLiquid } from '../../support/light-hydrocarbons.ts'
import { must } from '../../support/must.ts'

const number = (row: PublishedRow, name: string): number => Number(inputOf(row, name).value)
const fixed = (value: number, decimals: number): string => new Decimal(value).toFixed(decimals, Decimal.ROUND_HALF_UP)

checkPublishedRows('lpg/published.json', (row, expected) => {
  const RD60 = (): number => number(row, 'relative density 60/60F')
  switch (expected.name) {
    case 'volume correction factor to 60F': return fixed(lightCtl(number(row, 'specific gravity 60F'), number(row, 'temperature')), 3)
    case 'maximum propane volume': {
      // 29 CFR 1910.110(b)(19)(v)(d): water capacity × filling density / (specific gravity × factor × 100)
      const factor = fixed(lightCtl(0.51, 40), 3)
      const divisor = new Decimal(inputOf(row, 'specific gravity 60F').value).times(factor).times(100).toFixed(1)
      return new Decimal(inputOf(row, 'water capacity').value).times(inputOf(row, 'filling density').value).div(divisor).toFixed(1)
    }
    case 'VCF (CTL) to 15C': {
      const liquid = must(baseLiquid({ value: `${inputOf(row, 'density at 15C').value} kg/m3` }, '15 degC'))
      const { ctl } = must(liquid.correct({ temperature: { text: '', value: new Decimal(inputOf(row, 'temperature').value), unit: 'degC' }, pressure: null }, { temperature: 't', pressure: 'P' })).factors
      return fixed(ctl, 4)
    }
    case 'density at base temperature': {
      const base = inputOf(row, 'base temperature').value === '15' ? 59 : 68
      return fixed(RD60() * WATER_AT_60F * lightCtl(RD60(), base), 1)
    }
    case 'A': return fixed(compressibilityConstants(RD60(), 1.8 * number(row, 'temperature') + 32).A * KPA_PER_PSI, 0)
    case 'B': return fixed(compressibilityConstants(RD60(), 1.8 * number(row, 'temperature') + 32).B, 3)
    case 'vapour pressure': return fixed(vapourPressure(RD60(), number(row, 'temperature')) - ATMOSPHERE_PSI, 1)
    case 'F': case 'CPL': {
      const above = number(row, 'pressure') - number(row, 'vapour pressure')
      const F = lightCompressibility(RD60(), number(row, 'temperature'), above)
      return expected.name === 'F' ? fixed(F, 9) : fixed(lightCpl(F, above), 4)
    }
    case 'molar volume': case 'compressibility factor': {
      const bar = inputOf(row, 'pressure').unit === 'atm' ? 1.01325 : 1
      const [T, P] = [number(row, 'temperature'), number(row, 'pressure') * bar]
      const Z = vapourZ({ name: '', M: 0, Tc: number(row, 'Tc'), Pc: number(row, 'Pc') * bar, omega: number(row, 'acentric factor') }, T, P)
      return expected.name === 'molar volume' ? (Z * GAS_CONSTANT * 10 * T) / P : Z
    }
    case 'factor': return (number(row, 'molar mass') * 100) / (GAS_CONSTANT * 1000)
    default: throw new Error(`${row.id}: nothing computes “${expected.name}”`)
  }
})

const base = z.object({ id: z.string(), fluid: z.string() })
const LIBRARY = z.object({
  molarMass: z.array(base.extend({ RD60: z.number(), M: z.number(), Tc: z.number(), Pc: z.number(), omega: z.number() })),
  saturated60: z.array(base.extend({ kmolPerM3: z.number() })),
  ctl: z.array(base.extend({ RD60: z.number(), degF: z.number(), ctl: z.number() })),
  compressibility: z.array(base.extend({ RD60: z.number(), degF: z.number(), psiAbove: z.number(), perPsi: z.number() })),
  vapour: z.array(base.extend({ M: z.number(), degC: z.number(), bar: z.number(), Z: z.number() })),
}).parse(JSON.parse(readFileSync(join(import.meta.dirname, '../../published/lpg/property-library.json'), 'utf8')))

/**
 * A general-purpose property library (CoolProp 8.0.0): reference equations of the pure substances, with which the correlations
 * of the standards share nothing. How near they must come is common practice, no source: it stands with each check.
 */
describe('beside the reference equations of the pure substances', () => {
  it.each(LIBRARY.saturated60)('$id: RD60 × 999.016 / molar mass is the saturated density at 60 °F, to 0.25 %', ({ fluid, kmolPerM3 }) => {
    const { RD60, M } = LIBRARY.molarMass.find((one) => one.fluid === fluid)!
    expect(Math.abs((RD60 * 999.016) / M / kmolPerM3 - 1)).toBeLessThan(0.0025)
  })

  it.each(LIBRARY.ctl)('$id: CTL to 0.3 %', ({ RD60, degF, ctl }) => {
    expect(Math.abs(lightCtl(RD60, degF) / ctl - 1)).toBeLessThan(0.003)
  })

  it.each(LIBRARY.ctl)('$id: the chain through 15 °C gives the same ratio of densities', ({ RD60, degF }) => {
    expect(lightCtlFrom('15 degC', RD60, degF) * lightCtl(RD60, 59)).toBeCloseTo(lightCtl(RD60, degF), 12)
  })

  it.each(LIBRARY.compressibility)('$id: compressibility to 6.5 %', ({ RD60, degF, psiAbove, perPsi }) => {
    expect(Math.abs(lightCompressibility(RD60, degF, psiAbove) / perPsi - 1)).toBeLessThan(0.065)
  })

  it.each(LIBRARY.vapour)('$id: Z of saturated vapour to 1.2 %', ({ M, degC, bar, Z }) => {
    expect(Math.abs(vapourZ(gasOf(M), degC + 273.15, bar) / Z - 1)).toBeLessThan(0.012)
  })

  it('the constants of the paraffins are those of the library, as rounded', () => {
    for (const { name, M, Tc, Pc, omega } of PARAFFINS) {
      const other = LIBRARY.molarMass.find((one) => one.fluid === name)!
      expect([name, Math.abs(M - other.M) < 0.0006, Math.abs(Tc - other.Tc) < 0.006, Math.abs(Pc - other.Pc) < 0.0006, Math.abs(omega - other.omega) < 0.0006]).toEqual([name, true, true, true, true])
    }
  })

  it('a textbook prints nearly the same: propane 369.8 K, 42.48 bar, 0.152 and n-butane 425.1 K, 37.96 bar (Smith and Van Ness, worked solutions)', () => {
    const [propane, butane] = [gasOf(44.096), gasOf(58.122)]
    expect(Math.abs(propane.Tc - 369.8)).toBeLessThan(0.1)
    expect(Math.abs(propane.Pc / 42.48 - 1)).toBeLessThan(0.001)
    expect(Math.abs(propane.omega - 0.152)).toBeLessThan(0.001)
    expect(Math.abs(butane.Tc - 425.1)).toBeLessThan(0.1)
    expect(butane.Pc).toBe(37.96)
  })
})
