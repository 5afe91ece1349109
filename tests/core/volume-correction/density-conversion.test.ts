import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { display } from '../../../core/rounding/index.ts'
import { convertDensity, densityMeterFactor, readMeterFactor, type DensityConversionInput } from '../../../core/volume-correction/index.ts'
import { must } from '../../support/must.ts'
import { inputOf, publishedRows } from '../../support/published-rows.ts'
import { codesOf } from '../../support/refusals.ts'

const PRODUCT: DensityConversionInput = { commodity: 'refined', density: { value: '36.0 degAPI' }, baseTemperature: '60 degF' }
const OBSERVED: DensityConversionInput = { commodity: 'refined', density: { value: '835.2 kg/m3', temperature: '27.5 degC' }, baseTemperature: '15 degC' }

describe('density into density', () => {
  // ASTM D1250-80 Table 3, products, by that edition: °API at 60 °F → relative density 60/60 (4 decimals), density at 15 °C (0.1)
  it.each(publishedRows('d1250-80/table-3.json'))('$id by the tables of 1980', (row) => {
    const output = must(convertDensity({ ...PRODUCT, edition: 'ASTM-D1250-80', density: { value: `${inputOf(row, 'API gravity at 60F').value} degAPI` } }))
    for (const { name, value } of row.expected) {
      expect(name === 'density at 15C' ? display(output.unrounded.density15, 1) : display(output.unrounded.relativeDensity, 4), name).toBe(value)
    }
  })

  // API MPMS 11.5: RD = 141.5 / (API + 131.5); worked by hand: 141.5 / 167.5 = 0.84477612, × 999.016 = 843.9448
  it('36.0 °API is 0.84478 and 843.94 kg/m³ at 60 °F', () => {
    const output = must(convertDensity(PRODUCT))
    expect([output.api.value, output.relativeDensity.value, output.density60.value]).toEqual(['36.00', '0.84478', '843.94'])
    expect(output.standard).toMatch(/^API MPMS 11.1-2004, refined products/)
  })

  it('the same °API is another density at 15 °C for crude and for products', () => {
    expect(must(convertDensity(PRODUCT)).density15.value).not.toBe(must(convertDensity({ ...PRODUCT, commodity: 'crude' })).density15.value)
  })

  it('warmer is lighter: at 20 °C below 60 °F below 15 °C', () => {
    fc.assert(fc.property(fc.constantFrom('crude', 'refined', 'lube'), fc.double({ min: 810, max: 1070, noNaN: true }), (commodity, density) => {
      const { unrounded } = must(convertDensity({ commodity, density: { value: `${density.toFixed(4)} kg/m3` }, baseTemperature: '15 degC' }))
      expect(unrounded.density20).toBeLessThan(unrounded.density60)
      expect(unrounded.density60).toBeLessThan(unrounded.density15)
    }))
  })

  it('each into each and back: 15 °C → 20 °C → 60 °F → °API → 15 °C', () => {
    fc.assert(fc.property(fc.constantFrom('crude', 'refined'), fc.double({ min: 650, max: 1070, noNaN: true }), (commodity, density) => {
      const first = must(convertDensity({ commodity, density: { value: `${density.toFixed(6)} kg/m3` }, baseTemperature: '15 degC' })).unrounded
      const second = must(convertDensity({ commodity, density: { value: `${first.density20.toFixed(9)} kg/m3` }, baseTemperature: '20 degC' })).unrounded
      const third = must(convertDensity({ commodity, density: { value: `${second.density60.toFixed(9)} kg/m3` }, baseTemperature: '60 degF' })).unrounded
      const fourth = must(convertDensity({ commodity, density: { value: `${third.api.toFixed(12)} degAPI` }, baseTemperature: '15 degC' })).unrounded
      expect(Math.abs(fourth.density15 - Number(density.toFixed(6)))).toBeLessThan(2e-5)
    }), { numRuns: 200 })
  })

  it('observed to base with and without the hydrometer’s glass: the glass takes 0.000288 off at 27.5 °C', () => {
    const bare = must(convertDensity(OBSERVED)).unrounded.density15
    const glass = must(convertDensity({ ...OBSERVED, density: { ...OBSERVED.density!, hydrometer: true } })).unrounded.density15
    // 1 − 0.000023 × 12.5 − 0.00000002 × 12.5² = 0.999709375
    expect(glass / bare).toBeCloseTo(0.999709375, 5)
  })

  it('goes by each commodity’s own equation: benzene, ethanol, methyl esters, water', () => {
    expect(must(convertDensity({ commodity: 'chemical', component: 'benzene', density: { value: '883.6 kg/m3' }, baseTemperature: '60 degF' })).density15.value).toBe('884.18')
    expect(must(convertDensity({ commodity: 'biodiesel', edition: 'EN-14214', density: { value: '880.0 kg/m3' }, baseTemperature: '15 degC' })).density20.value).toBe('876.39') // 880 − 0.723 × 5 = 876.385
    expect(must(convertDensity({ commodity: 'ethanol', edition: 'OIML-R22', content: '100 %', baseTemperature: '15 degC' })).density20.value).toBe('789.24') // OIML R 22: 789.2391
    expect(must(convertDensity({ commodity: 'water', baseTemperature: '20 degC' })).density60.value).toBe('999.02') // API MPMS 11.4.1: 999.016
  })

  it('has every line from lines above it, and no symbol twice', () => {
    for (const input of [PRODUCT, OBSERVED, { ...OBSERVED, meterFactor: '1.0012' }, { ...OBSERVED, proving: { reference: '835.9 kg/m3', meter: '835.2 kg/m3' } }]) {
      const seen = new Set<string>()
      for (const line of must(convertDensity(input)).worksheet) {
        expect(line.from.filter((symbol) => !seen.has(symbol)), line.symbol).toEqual([])
        expect(seen.has(line.symbol), line.symbol).toBe(false)
        seen.add(line.symbol)
      }
    }
  })
})

describe('density meter factor (common practice, no source)', () => {
  it('is reference over reading, to 0.0001: 836.2 / 835.2 = 1.0012', () => {
    expect(must(densityMeterFactor({ reference: '836.2 kg/m3', meter: '835.2 kg/m3' }, 'proving')).factor.text).toBe('1.0012')
    expect(must(densityMeterFactor({ reference: '0.8362 g/cm3', meter: '835.2 kg/m3' }, 'proving')).factor.text).toBe('1.0012')
  })

  it('multiplies the reading before it goes to base', () => {
    const metered = must(convertDensity({ ...OBSERVED, meterFactor: '1.0012' }))
    // 835.2 × 1.0012 = 836.20224
    expect(metered.unrounded).toEqual(must(convertDensity({ ...OBSERVED, density: { ...OBSERVED.density!, value: '836.20224 kg/m3' } })).unrounded)
    expect(metered.meterFactor).toBe('1.0012')
    expect(must(convertDensity(OBSERVED)).meterFactor).toBeNull()
    expect(must(convertDensity({ ...OBSERVED, proving: { reference: '836.2 kg/m3', meter: '835.2 kg/m3' } })).unrounded).toEqual(metered.unrounded)
  })

  it.each([['0.95', true], ['1.05', true], ['0.9499', false], ['1.0501', false]] as const)('%s: accepted %s', (factor, accepted) => {
    expect(codesOf(readMeterFactor(factor, 'meterFactor'))).toEqual(accepted ? [] : ['out-of-range'])
  })
})
