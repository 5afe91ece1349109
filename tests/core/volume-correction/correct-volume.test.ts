import { describe, expect, it } from 'vitest'
import { SOURCES, sourceKeyOf } from '../../../core/sources.ts'
import { degF, parseTemperature } from '../../../core/units/index.ts'
import {
  baseDensityIn, correctVolume, factorsAt, findBaseLiquid, volumeCorrectionOutputSchema,
  type DensityInput, type Group, type VolumeCorrectionInput, type VolumeCorrectionOutput,
} from '../../../core/volume-correction/index.ts'
import { must } from '../../support/must.ts'

type WithDensity = VolumeCorrectionInput & { readonly commodity: Group; readonly density: DensityInput }

const CRUDE: WithDensity = { commodity: 'crude', density: { value: '31.4 degAPI' }, baseTemperature: '60 degF', temperature: '88.3 degF', pressure: '0 psi' }
const DIESEL: WithDensity = {
  commodity: 'refined', density: { value: '835.2 kg/m3', temperature: '27.5 degC', pressure: '0 kPa', hydrometer: true },
  baseTemperature: '15 degC', temperature: '31.25 degC', pressure: '350 kPa',
}

function corrected(input: VolumeCorrectionInput): VolumeCorrectionOutput {
  return must(correctVolume(input))
}

function line(output: VolumeCorrectionOutput, symbol: string): VolumeCorrectionOutput['worksheet'][number] {
  const found = output.worksheet.find((one) => one.symbol === symbol)
  if (found === undefined) throw new Error(`no line ${symbol}`)
  return found
}

const symbols = (output: VolumeCorrectionOutput): readonly string[] => output.worksheet.map((one) => one.symbol)

describe('the worksheet', () => {
  it('goes from the density as stated to CTPL', () => {
    expect(symbols(corrected(CRUDE))).toEqual(['ρstated', 'ρ60', 'ρb', 'API60', 'α60', 't', 'P', 'Fp', 'CTL', 'CPL', 'CTPL'])
  })

  it('goes from what was observed, with the hydrometer correction, to CTPL', () => {
    expect(symbols(corrected(DIESEL))).toEqual(['ρobs', 'tobs', 'Pobs', 'HYC', 'ρhyc', 'ρ60', 'ρb', 'α60', 't', 'P', 'Fp', 'CTL', 'CPL', 'CTPL', 'CTPLobs', 'Valt/Vobs'])
  })

  it.each([CRUDE, DIESEL, { ...CRUDE, commodity: 'special', alpha: '0.000510 /degF' } as const, { ...CRUDE, density: { value: '0.8682 RD', temperature: '72 degF' } }])('names for each line lines before it, a known source and, where it was computed, a formula', (input) => {
    const before = new Set<string>()
    for (const one of corrected(input).worksheet) {
      expect(one.from.filter((symbol) => !before.has(symbol)), one.symbol).toEqual([])
      expect(before.has(one.symbol), `${one.symbol} twice`).toBe(false)
      expect(SOURCES).toHaveProperty([sourceKeyOf(one.clause)])
      if (one.rounding !== 'as written') expect(one.formula, one.symbol).not.toBe('')
      before.add(one.symbol)
    }
  })

  it('carries what the answer says', () => {
    const output = corrected(DIESEL)
    expect(volumeCorrectionOutputSchema.parse(output)).toEqual(output)
    expect(line(output, 'CTL').value).toBe(output.ctl)
    expect(line(output, 'CPL').value).toBe(output.cpl)
    expect(line(output, 'CTPL').value).toBe(output.ctpl)
    expect(Number(line(output, 'CTPL').unrounded)).toBe(output.unrounded.ctpl)
    expect(line(output, 'ρb').value).toBe(output.baseDensity.value)
  })

  it('keeps the digits that were written, and says what the standard makes of a pressure below the atmosphere', () => {
    const output = corrected({ ...CRUDE, temperature: '88.30 °F', pressure: '-7.30 psi' })
    expect(line(output, 't')).toMatchObject({ value: '88.30', unit: 'degF', rounding: 'as written' })
    expect(line(output, 'P')).toMatchObject({ value: '-7.30', unit: 'psi', notes: ['below the atmosphere: taken as 0 (MPMS-11.1-2004 11.1.6.1)'] })
    expect(output.cpl).toBe('1.00000')
  })

  it('counts an absolute pressure from the standard atmosphere, and says so', () => {
    const absolute = corrected({ ...CRUDE, pressure: '451.325 kPaa' })
    expect(line(absolute, 'P').notes).toEqual(['absolute; counted from the standard atmosphere of 101.325 kPa'])
    expect(absolute.unrounded.cpl).toBeCloseTo(corrected({ ...CRUDE, pressure: '350 kPa' }).unrounded.cpl, 12)
  })

  it('says that no pressure was stated', () => {
    const { commodity, density, baseTemperature, temperature } = CRUDE
    expect(line(corrected({ commodity, density, baseTemperature, temperature }), 'P').notes).toEqual(['under the atmosphere: no pressure was stated'])
  })

  it('rounds CTPL from the unrounded factors, not from the rounded ones', () => {
    // example 11.1.7.1/ex1 of API MPMS 11.1-2004: 1.048420095319 × 1.001652488031 = 1.050152596978; 1.04842 × 1.00165 would be 1.05014989
    const output = corrected({ commodity: 'crude', density: { value: '772.3 kg/m3' }, baseTemperature: '15 degC', temperature: '-32.8 degC', pressure: '24.6 bar' })
    expect(output).toMatchObject({ ctl: '1.04842', cpl: '1.00165', ctpl: '1.05015' })
  })
})

describe('the unit of the base density', () => {
  it('is the one that was written', () => {
    expect(corrected(CRUDE).baseDensity).toEqual({ value: '31.4', unit: 'degAPI' })
    expect(corrected({ ...CRUDE, density: { value: '0.86822 RD' } }).baseDensity).toEqual({ value: '0.8682', unit: 'RD' })
    expect(corrected({ ...CRUDE, density: { value: '0.84535 g/cm3' } }).baseDensity).toEqual({ value: '0.8454', unit: 'g/cm3' })
    expect(corrected({ ...CRUDE, density: { value: '867.75 kg/m3' } }).baseDensity).toEqual({ value: '867.8', unit: 'kg/m3' })
  })

  it('a stated half is a half: 31.45 °API is printed as 31.5, though there and back it is 31.449999…', () => {
    expect(corrected({ ...CRUDE, density: { value: '31.45 degAPI' } }).baseDensity.value).toBe('31.5')
    expect(corrected({ ...CRUDE, density: { value: '845.35 kg/m3' }, baseTemperature: '15 degC' }).baseDensity.value).toBe('845.4')
  })

  it('°API and RD are at 60 °F whatever the base temperature: the same liquid stated both ways is the same liquid', () => {
    const byApi = corrected({ ...CRUDE, baseTemperature: '15 degC' })
    expect(byApi.baseDensity).toEqual({ value: '31.4', unit: 'degAPI' })
    expect(line(byApi, 'ρstated').name).toBe('Density as stated, at 60 degF')
    expect(line(byApi, 'ρb')).toMatchObject({ name: 'Base density, at 15 degC and 0 psig', unit: 'kg/m3', formula: 'ρ60 × CTL(60 °F → 15 degC)' })
    const byDensity = corrected({ ...CRUDE, density: { value: `${byApi.unrounded.baseDensity} kg/m3` }, baseTemperature: '15 degC' })
    expect(byDensity.unrounded.ctl).toBeCloseTo(byApi.unrounded.ctl, 10)
  })

  it('is what quantity prints in the unit of the product', () => {
    const { liquid } = must(findBaseLiquid(DIESEL, { density: 'density', alpha: 'alpha' }))
    expect(baseDensityIn(liquid, 'kg/m3').text).toBe(corrected(DIESEL).baseDensity.value)
    expect(baseDensityIn(liquid, 'degAPI').text).toBe(corrected({ ...DIESEL, density: { value: `${141.5 / (liquid.density60 / 999.016) - 131.5} degAPI` } }).baseDensity.value)
  })
})

describe('the hydrometer', () => {
  const factor = (input: VolumeCorrectionInput): number => Number(line(corrected(input), 'HYC').value)

  // MPMS 9: 1 − 0.00001278 × 23 − 0.0000000062 × 23² = 0.99970278020, by hand
  it('in °API is graduated at 60 °F, whatever the base temperature', () => {
    const density = { value: '40.5 degAPI', temperature: '83 degF', hydrometer: true }
    expect(factor({ ...CRUDE, commodity: 'refined', density })).toBeCloseTo(0.9997027802, 10)
    expect(factor({ ...CRUDE, commodity: 'refined', density, baseTemperature: '15 degC' })).toBeCloseTo(0.9997027802, 10)
  })

  // MPMS 9: 1 − 0.000023 × 12.5 − 0.00000002 × 12.5² = 0.999709375, and with 7.5 instead of 12.5: 0.999826375, by hand
  it('in kg/m³ is graduated at the base temperature', () => {
    expect(factor(DIESEL)).toBeCloseTo(0.999709375, 12)
    expect(factor({ ...DIESEL, baseTemperature: '20 degC' })).toBeCloseTo(0.999826375, 12)
  })

  it('changes nothing when a density meter was read', () => {
    expect(symbols(corrected({ ...DIESEL, density: { ...DIESEL.density, hydrometer: false } }))).not.toContain('HYC')
  })
})

describe('the zone', () => {
  // API MPMS 11.1-2004, 11.1.6.1: the lower bound of a zone belongs to it
  it.each([
    ['1163.5', 'fuel-oil'], ['838.3127', 'fuel-oil'], ['838.3126', 'jet'], ['787.5195', 'jet'], ['787.5194', 'transition'],
    ['770.352', 'transition'], ['770.3519', 'gasoline'], ['610.6', 'gasoline'],
  ])('of a refined product of %s kg/m³ is %s', (density, subgroup) => {
    expect(corrected({ ...CRUDE, commodity: 'refined', density: { value: `${density} kg/m3` } }).subgroup).toBe(subgroup)
  })

  it.each([['crude', 'crude'], ['lube', 'lubricating'], ['special', 'special']] as const)('of %s is %s', (commodity, subgroup) => {
    const alpha = commodity === 'special' ? { alpha: '0.000450 /degF' } : {}
    expect(corrected({ ...CRUDE, ...alpha, commodity }).subgroup).toBe(subgroup)
  })
})

describe('a special application', () => {
  it('takes alpha per °F or per °C', () => {
    const perF = corrected({ commodity: 'special', alpha: '0.000510 /degF', density: { value: '780 kg/m3' }, baseTemperature: '60 degF', temperature: '80 degF' })
    const perC = corrected({ commodity: 'special', alpha: '0.000918 per °C', density: { value: '780 kg/m3' }, baseTemperature: '60 degF', temperature: '80 degF' })
    expect(perC.unrounded).toEqual(perF.unrounded)
    expect(line(perC, 'α60')).toMatchObject({ value: '0.000918', unit: '/degC', notes: ['given for a special application'] })
  })
})

describe('one liquid at several conditions', () => {
  it('gives the factors of tank and line from one base density, as the whole correction gives them', () => {
    const { liquid } = must(findBaseLiquid(DIESEL, { density: 'density', alpha: 'alpha' }))
    for (const temperature of ['31.25 degC', '24.5 degC', '-3 degC']) {
      const t = degF(must(parseTemperature(temperature, 'line')))
      expect(factorsAt(liquid, t, 0).ctl).toBe(corrected({ ...DIESEL, temperature, pressure: '0 kPa' }).unrounded.ctl)
    }
  })

  it('gives the density at the conditions of the observation back', () => {
    const { liquid, reading } = must(findBaseLiquid(DIESEL, { density: 'density', alpha: 'alpha' }))
    expect(factorsAt(liquid, degF(must(parseTemperature('27.5 degC', 't'))), 0).density).toBeCloseTo(reading.used, 5)
  })
})
