import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { densityOfWater, seawaterDensity, waterDensity, waterDensityOf1980, correctVolume, WATER } from '../../../core/volume-correction/index.ts'
import { must } from '../../support/must.ts'
import { checkPublishedRows, inputOf, publishedRows } from '../../support/published-rows.ts'
import { referenceDensities } from '../../support/reference-densities.ts'

// UNESCO technical paper 44 (1983), temperatures on IPTS-68
checkPublishedRows('water/unesco-44.json', (row) => seawaterDensity(Number(inputOf(row, 'practical salinity').value), Number(inputOf(row, 'temperature').value)))

/** Equations of other authors, from memory but for the fourth, to hold ours against; none of them is in core. */
const tanaka = (t: number): number => 999.97495 * (1 - ((t - 3.983035) ** 2 * (t + 301.797)) / (522528.9 * (t + 69.34881)))
const kell = (t: number): number => (999.83952 + 16.945176 * t - 7.9870401e-3 * t ** 2 - 46.170461e-6 * t ** 3 + 105.56302e-9 * t ** 4 - 280.54253e-12 * t ** 5) / (1 + 16.87985e-3 * t)
const jonesHarris = (t: number): number => 999.85308 + 6.32693e-2 * t - 8.523829e-3 * t ** 2 + 6.943248e-5 * t ** 3 - 3.821216e-7 * t ** 4

describe('density of water', () => {
  // Tanaka et al. 2001 (from memory), a measurement at 16 °C, a sheet of 1998: all of water by other means than 11.4.1
  it.each(publishedRows('water/water.json'))('$id: within 0.003 kg/m³ of Patterson and Morris', (row) => {
    const printed = Number(row.expected[0]!.value)
    expect(Math.abs(waterDensity(Number(inputOf(row, 'temperature').value)) - printed)).toBeLessThan(row.id === 'water/0C-IP' ? 0.004 : 0.003)
  })

  it.each([
    ['Tanaka et al. 2001', tanaka, 0, 0.0018], ['Kell 1975', kell, 0, 0.004], ['Jones and Harris 1992, 5 to 40 °C', jonesHarris, 5, 0.0038],
  ] as const)('Patterson and Morris are within 0.004 kg/m³ of %s', (_, other, from, most) => {
    for (let t = from; t <= 40; t += 0.25) expect(Math.abs(waterDensity(t) - other(t)), `${t} °C`).toBeLessThan(most)
  })

  it('Wagenbreth and Blanke are within 0.0025 kg/m³ of Kell, of the same years', () => {
    for (let t = 0; t <= 25; t += 0.25) expect(Math.abs(waterDensityOf1980(t) - kell(t)), `${t} °C`).toBeLessThan(0.0025)
  })

  it('seawater without salt is Tanaka’s water to 0.006 kg/m³', () => {
    for (let t = 0; t <= 40; t += 1) expect(Math.abs(seawaterDensity(0, t) - tanaka(t)), `${t} °C`).toBeLessThan(0.006)
  })

  // reference equation of state of water (IAPWS-95) by a general-purpose property library
  it('is that of the reference equation of state to 0.0025 kg/m³', () => {
    for (const [t, density] of referenceDensities('water')) {
      expect(Math.abs(waterDensity(t) - density), `${t} °C`).toBeLessThan(0.0025)
      expect(Math.abs(waterDensityOf1980(t) - density), `${t} °C`).toBeLessThan(0.006)
    }
  })

  it('is greatest near 4 °C, rises with salt and falls with temperature above', () => {
    expect(waterDensity(3.9818)).toBeGreaterThan(waterDensity(3))
    expect(waterDensity(3.9818)).toBeGreaterThan(waterDensity(5))
    fc.assert(fc.property(fc.double({ min: 5, max: 39, noNaN: true }), fc.double({ min: 0, max: 41, noNaN: true }), (t, S) => {
      expect(waterDensity(t + 1)).toBeLessThan(waterDensity(t))
      expect(waterDensityOf1980(t + 1)).toBeLessThan(waterDensityOf1980(t))
      expect(seawaterDensity(S, t + 1)).toBeLessThan(seawaterDensity(S, t))
      expect(seawaterDensity(S + 1, t)).toBeGreaterThan(seawaterDensity(S, t) + 0.7)
    }))
  })
})

describe('the operation on water', () => {
  it('60 °F: 999.016 kg/m³ by 11.4.1, 999.012 by the equation of 1984 (API MPMS, both)', () => {
    expect(must(densityOfWater({ temperature: '60 degF' })).density).toEqual({ value: '999.016', unit: 'kg/m3' })
    expect(must(densityOfWater({ temperature: '60 degF', equation: 'MPMS-11.2.3' })).density.value).toBe('999.012')
  })

  it('15 °C: 999.102 kg/m³ (API MPMS 11.5: RD15 = ρ15 / 999.102)', () => {
    expect(must(densityOfWater({ temperature: '15 degC' })).density.value).toBe('999.102')
  })

  it('seawater of 35 PSU at 25 °C: the check value of 1023.343 is of 25 °C on IPTS-68; on today’s thermometer it is 24.994 °C', () => {
    expect(must(densityOfWater({ temperature: '24.994 degC', salinity: '35 PSU' })).density.value).toBe('1023.343')
    expect(must(densityOfWater({ temperature: '24.994 degC', salinity: '35 PSU' })).standard).toBe(WATER['UNESCO-44'].standard)
  })

  it('says that water without salinity is fresh, and prints the salinity of seawater', () => {
    for (const equation of ['MPMS-11.4.1', 'MPMS-11.2.3'] as const) {
      const { worksheet } = must(densityOfWater({ temperature: '15 degC', referenceTemperature: '20 degC', equation }))
      expect(worksheet.map(({ symbol }) => symbol)).toEqual(['t', 'ρw', 'tref', 'ρref', 'CTDW'])
      for (const symbol of ['ρw', 'ρref']) expect(worksheet.find((line) => line.symbol === symbol)?.notes).toContain('fresh water: the equation is without salt')
    }
    const sea = must(densityOfWater({ temperature: '15 degC', salinity: '35 PSU' })).worksheet
    expect(sea.find(({ symbol }) => symbol === 'S')).toMatchObject({ value: '35', unit: 'PSU' })
    expect(sea.flatMap(({ notes }) => notes).join()).not.toContain('fresh')
  })

  it('says so as a commodity, on the lines of its base density and of CTL', () => {
    const fresh = must(correctVolume({ commodity: 'water', baseTemperature: '15 degC', temperature: '20 degC' })).worksheet
    expect(fresh.find(({ symbol }) => symbol === 'ρb')?.formula).toBe('ρw(15 degC), fresh water')
    expect(fresh.find(({ symbol }) => symbol === 'CTL')?.notes).toContain('fresh water: the equation is without salt')
    const sea = must(correctVolume({ commodity: 'water', edition: 'UNESCO-44', salinity: '0 PSU', baseTemperature: '15 degC', temperature: '20 degC' })).worksheet
    expect(sea.find(({ symbol }) => symbol === 'ρb')).toMatchObject({ formula: 'ρw(15 degC), seawater', from: ['S'] })
  })

  it('the ratio to a reference temperature is that of the densities', () => {
    const output = must(densityOfWater({ temperature: '30 degC', referenceTemperature: '20 degC' }))
    expect(output.unrounded.ratio).toBe(waterDensity(30) / waterDensity(20))
    expect(output.ratio).toBe('0.997438')
  })

  it('water is a commodity too: at 20 °C from a base of 15 °C', () => {
    const output = must(correctVolume({ commodity: 'water', baseTemperature: '15 degC', temperature: '20 degC' }))
    expect(output.unrounded.ctl).toBe(waterDensity(20) / waterDensity(15))
    expect(output.baseDensity).toEqual({ value: '999.1', unit: 'kg/m3' })
    expect(must(correctVolume({ commodity: 'water', edition: 'UNESCO-44', salinity: '35 PSU', baseTemperature: '15 degC', temperature: '20 degC' })).subgroup).toBe('seawater')
  })
})
