import { describe, expect, it } from 'vitest'
import { SOURCES, sourceKeyOf } from '../../../core/sources.ts'
import { Decimal } from '../../../core/units/index.ts'
import {
  checkSettings, COMMODITIES, correctVolume, EDITIONS, FAMILIES, settingPaths, volumeCorrectionOutputSchema,
  type Commodity, type VolumeCorrectionInput, type VolumeCorrectionOutput,
} from '../../../core/volume-correction/index.ts'
import { anInput, LIQUIDS } from '../../support/commodities.ts'
import { findingsOf, must } from '../../support/must.ts'
import { lineOf } from '../../support/worksheets.ts'

function corrected(commodity: Commodity, parts: Partial<VolumeCorrectionInput> = {}): VolumeCorrectionOutput {
  return must(correctVolume(anInput(commodity, parts)))
}

describe.each(COMMODITIES)('the family of %s', (commodity) => {
  it('has editions that are sources, and that a product can name', () => {
    for (const edition of FAMILIES[commodity].editions) {
      expect(SOURCES).toHaveProperty([edition])
      expect(EDITIONS).toContain(edition)
    }
  })

  it('gives factors with a worksheet that can be worked from top to bottom', () => {
    const output = corrected(commodity)
    expect(volumeCorrectionOutputSchema.parse(output)).toEqual(output)
    const before = new Set<string>()
    for (const line of output.worksheet) {
      expect(line.from.filter((symbol) => !before.has(symbol)), line.symbol).toEqual([])
      expect(before.has(line.symbol), `${line.symbol} twice`).toBe(false)
      expect(SOURCES, line.clause).toHaveProperty([sourceKeyOf(line.clause)])
      before.add(line.symbol)
    }
    for (const symbol of ['ρb', 't', 'P', 'CTL', 'CPL', 'CTPL']) lineOf(output.worksheet, symbol)
    expect(output.ctpl).toBe(lineOf(output.worksheet, 'CTPL').value)
    expect(output.standard).not.toBe('')
    expect(output.densityAtConditions).toBeCloseTo(output.unrounded.baseDensity * output.unrounded.ctpl, 9)
  })

  it('gives 1 at the base temperature, and less when it is warmer', () => {
    const at = (temperature: string): number => corrected(commodity, { temperature }).unrounded.ctl
    // the polynomials of ASTM D1555 and of the fuel rule give 1 at 60 °F but for their own rounding
    expect(at(LIQUIDS[commodity].baseTemperature ?? '15 degC')).toBeCloseTo(1, commodity === 'chemical' || commodity === 'ethanol' || commodity === 'biodiesel' ? 4 : 9)
    expect(at('20 degC')).toBeLessThan(1)
    expect(at('25 degC')).toBeLessThan(at('20 degC'))
  })

  it('goes there and back: a density observed at 20 °C gives the base density that it came from', () => {
    const there = corrected(commodity, { temperature: '20 degC' })
    const back = corrected(commodity, { density: { value: `${new Decimal(there.densityAtConditions).toFixed(6)} kg/m3`, temperature: '20 degC' }, temperature: '20 degC' })
    expect(Math.abs(back.unrounded.baseDensity - there.unrounded.baseDensity)).toBeLessThan(commodity === 'lpg' ? 0.06 : 2e-5)
    expect(back.observed?.toAlternate).toMatch(/^1\.0+$/)
  })

  it('refuses every setting that is not its own, by name', () => {
    const all = { ...LIQUIDS.special, ...LIQUIDS.chemical, ...LIQUIDS.curve, molarMass: '44.1 g/mol', content: '99.5 %', salinity: '35 PSU', figures: 'four' } as const
    const { density: _, temperature: __, baseTemperature: ___, ...settings } = all
    const { needs, may } = FAMILIES[commodity].settings
    const found = findingsOf(checkSettings(commodity, { ...settings, edition: FAMILIES[commodity].editions[0], baseTemperature: LIQUIDS[commodity].baseTemperature ?? '15 degC' }, settingPaths('product')))
    const notUsed = found.filter(({ code }) => code === 'value-not-used').map(({ path }) => path.slice('product.'.length))
    for (const name of ['alpha', 'molarMass', 'component', 'content', 'salinity', 'curve'] as const) {
      if (![...needs, ...may].includes(name)) expect(notUsed).toContain(name)
    }
  })

  it('misses what it needs, and refuses an edition that is not its own', () => {
    const { settings: { needs }, editions } = FAMILIES[commodity]
    const other = EDITIONS.find((edition) => !editions.includes(edition)) ?? 'MPMS-11.1-2004'
    const found = findingsOf(checkSettings(commodity, { edition: other, baseTemperature: '15 degC' }, settingPaths('product')))
    expect(found.map(({ code, path }) => `${code} ${path}`)).toEqual(expect.arrayContaining(['out-of-range product.edition', ...needs.map((name) => `missing-value product.${name}`)]))
  })
})

describe('the addendum of 2019', () => {
  it('has the factors of 2004, prints them to five decimals, and says that volumes take them unrounded', () => {
    const of2004 = corrected('crude')
    const of2019 = corrected('crude', { edition: 'MPMS-11.1-2019' })
    expect(of2019.unrounded).toEqual(of2004.unrounded)
    expect(of2019.ctpl).toBe(of2004.ctpl)
    expect(of2019.standard).toBe('API MPMS 11.1-2004 with Addendum 2 (2019), crude oils')
    expect(lineOf(of2019.worksheet, 'CTPL').notes).toContain('printed to 0.00001; volumes are multiplied by the unrounded factor (MPMS-11.1-2019)')
    // the factor Fp is named Fs there
    expect(of2019.worksheet.map(({ symbol }) => symbol)).toContain('Fs')
  })

  it('is taken only where it is named', () => {
    expect(corrected('crude').standard).toBe('API MPMS 11.1-2004, crude oils')
  })
})

describe('from observed to other pressure and temperature', () => {
  // API MPMS 11.1-2004, 11.1.6.2: V2 / V1 = CTPL1 / CTPL2, density at t2 and P2 = base density × CTPL2
  const observed = { value: '835.2 kg/m3', temperature: '27.5 degC', pressure: '200 kPa' }

  it('gives the factors where the density was observed, and the ratio of the volumes', () => {
    const output = corrected('refined', { density: observed, temperature: '41.25 degC', pressure: '350 kPa' })
    const there = corrected('refined', { density: observed, temperature: '27.5 degC', pressure: '200 kPa' })
    expect(output.observed).toMatchObject({ ctl: there.ctl, cpl: there.cpl, ctpl: there.ctpl })
    expect(output.observed?.unrounded.toAlternate).toBeCloseTo(there.unrounded.ctpl / output.unrounded.ctpl, 14)
    // the same liquid weighs the same: ρ1 V1 = ρ2 V2
    expect((output.observed?.unrounded.toAlternate ?? 0) * output.densityAtConditions).toBeCloseTo(835.2, 5)
    expect(lineOf(output.worksheet, 'Valt/Vobs')).toMatchObject({ value: output.observed?.toAlternate, from: ['CTPLobs', 'CTPL'] })
  })

  it('has none for a density at base conditions', () => {
    expect(corrected('refined').observed).toBeNull()
  })
})

describe('without rounding', () => {
  it.each(COMMODITIES)('the figures of %s have all their digits', (commodity) => {
    const exact = corrected(commodity, { rounding: 'none' })
    const usual = corrected(commodity)
    expect(exact.unrounded).toEqual(usual.unrounded)
    expect(exact.ctl).toBe(new Decimal(usual.unrounded.ctl).toFixed())
    expect(exact.ctpl).toBe(new Decimal(usual.unrounded.ctpl).toFixed())
    expect(lineOf(exact.worksheet, 'CTL').value).toBe(exact.ctl)
    expect(corrected(commodity, { rounding: 'standard' })).toEqual(usual)
  })

  it('a base density that was observed has all its digits too, in the unit in which it was written', () => {
    const exact = corrected('crude', { rounding: 'none', density: { value: '31.4 degAPI', temperature: '72 degF' } })
    expect(Number(exact.baseDensity.value)).toBeCloseTo(30.5, 0)
    expect(exact.baseDensity.value.length).toBeGreaterThan(10)
  })
})
