import { describe, expect, it } from 'vitest'
import { LIGHT_HYDROCARBONS } from '../../../core/volume-correction/lpg.ts'
import type { Correction, FamilyLiquid } from '../../../core/volume-correction/family.ts'
import { baseLiquid } from '../../support/light-hydrocarbons.ts'
import { must } from '../../support/must.ts'

const AT = { temperature: 'temperature', pressure: 'pressure' }
const correct = (liquid: FamilyLiquid, temperature: string, pressure?: string): Correction =>
  must(liquid.correct(must(LIGHT_HYDROCARBONS.readConditions({ temperature, pressure }, AT, 'MPMS-11.2.4-2007')), AT))
const valueOf = (lines: FamilyLiquid['lines'], symbol: string): string | undefined => lines.find((line) => line.symbol === symbol)?.value

describe('a sphere of propane', () => {
  it('stands at its vapour pressure: CTL of 29 CFR 1910.110, CPL 1', () => {
    const propane = must(baseLiquid({ value: '0.510 RD' }, '60 degF'))
    const { ctl, cpl, ctpl } = correct(propane, '40 degF')
    // printed with three decimals: 1.031
    expect(ctl.value.toFixed(3)).toBe('1.031')
    expect([cpl.text, ctpl.text]).toEqual(['1.00000', ctl.text])
  })

  it('in a line at 425 psi and 88.1 °F has the CPL of API MPMS 12.2, example 5: 1.0133', () => {
    const propane = must(baseLiquid({ value: '0.5050 RD' }, '60 degF'))
    const { cpl, lines } = correct(propane, '88.1 degF', '425 psi')
    expect(cpl.value.toFixed(4)).toBe('1.0133')
    expect(lines.map((line) => line.symbol)).toEqual(['t', 'P', 'tE', 'Pe', 'F', 'CTL', 'CPL', 'CTPL'])
  })

  it('in kPa and °C has the same CPL', () => {
    const propane = must(baseLiquid({ value: '0.5050 RD' }, '15 degC'))
    expect(correct(propane, '31.15 degC', '2930.3 kPa').cpl.value.toFixed(4)).toBe('1.0133')
  })

  it('is not pressed by less than its vapour pressure, and the worksheet says so', () => {
    const { cpl, lines } = correct(must(baseLiquid({ value: '0.5050 RD' }, '60 degF')), '88.1 degF', '150 psi')
    expect(cpl.text).toBe('1.00000')
    expect(lines.find((line) => line.symbol === 'CPL')).toMatchObject({ formula: '1', from: ['P', 'Pe'], notes: ['not above its vapour pressure'] })
  })
})

describe('the tables of three base temperatures', () => {
  it.each([['60 degF', '23E and 24E'], ['15 degC', '53E and 54E'], ['20 degC', '59E and 60E']] as const)('%s: tables %s, and CTL of 1 at the base temperature itself', (base, tables) => {
    const liquid = must(baseLiquid({ value: '0.5841 RD' }, base))
    expect(liquid.standard).toBe(`API MPMS 11.2.4-2007 (GPA TP-27), tables ${tables}`)
    expect(correct(liquid, base).ctpl.text).toBe('1.00000')
  })

  it('enter with 0.1 kg/m³ and 0.05 °C: what is between them has the same factor', () => {
    const factor = (density: string, temperature: string): string => correct(must(baseLiquid({ value: density }, '15 degC')), temperature).ctl.text
    expect(factor('508.04 kg/m3', '31.02 degC')).toBe(factor('508.0 kg/m3', '31.00 degC'))
    expect(factor('508.1 kg/m3', '31.00 degC')).not.toBe(factor('508.0 kg/m3', '31.00 degC'))
    expect(factor('508.0 kg/m3', '31.05 degC')).not.toBe(factor('508.0 kg/m3', '31.00 degC'))
  })

  it('a density at 15 °C that was stated keeps its digits', () => {
    const liquid = must(baseLiquid({ value: '508.0 kg/m3' }, '15 degC'))
    expect([liquid.baseDensity, valueOf(liquid.lines, 'ρb')]).toEqual([508, '508.0'])
  })

  it('a relative density that was stated gives the base density at 15 °C of the scope: 0.3500 is 351.7, 0.6880 is 687.8 kg/m³', () => {
    expect(valueOf(must(baseLiquid({ value: '0.3500 RD' }, '15 degC')).lines, 'ρb')).toBe('351.7')
    expect(valueOf(must(baseLiquid({ value: '0.6880 RD' }, '15 degC')).lines, 'ρb')).toBe('687.8')
  })

  it('an observed density says where it was observed, and how often the search ran', () => {
    const liquid = must(baseLiquid({ value: '520.0 kg/m3', temperature: '-5 degC' }, '15 degC'))
    expect(liquid.observed?.conditions.temperature.text).toBe('-5 degC')
    expect(liquid.passes).toBeGreaterThan(0)
    expect(liquid.baseDensity).toBeLessThan(520)
    expect(Math.abs((liquid.observed?.factors.density ?? 0) - 520)).toBeLessThan(0.1)
  })
})

describe('the worksheet of a light hydrocarbon', () => {
  const cases = [
    must(baseLiquid({ value: '0.510 RD' }, '60 degF')), must(baseLiquid({ value: '508.0 kg/m3' }, '15 degC')), must(baseLiquid({ value: '0.508 g/cm3' }, '20 degC')),
    must(baseLiquid({ value: '146 degAPI' }, '15 degC')), must(baseLiquid({ value: '0.49 RD', temperature: '75 degF', pressure: '425 psi', hydrometer: true }, '60 degF')),
  ]
  it.each(cases.map((liquid, i) => [i, liquid] as const))('%d: symbols once, every line from lines above it, ρb and ρ60 there', (_, liquid) => {
    const lines = [...liquid.lines, ...correct(liquid, '25 degC', '20 bar').lines]
    const known = new Set<string>()
    for (const line of lines) {
      expect(known.has(line.symbol), line.symbol).toBe(false)
      expect(line.from.filter((symbol) => !known.has(symbol))).toEqual([])
      known.add(line.symbol)
    }
    for (const symbol of ['ρb', 'ρ60', 'RD60']) expect(known.has(symbol)).toBe(true)
  })

  it('without a pressure says that the liquid stands at its vapour pressure, not under the atmosphere', () => {
    const { lines } = correct(must(baseLiquid({ value: '0.510 RD' }, '60 degF')), '40 degF')
    expect(lines.find((line) => line.symbol === 'P')).toMatchObject({ value: '0', notes: ['at its vapour pressure: no pressure was stated'] })
  })
})
