import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { densityInAir } from '../../../core/quantity/index.ts'
import { Decimal } from '../../../core/units/index.ts'
import { correctVolume, ethanolWaterDensity, fuelEthanolVcf, waterDensityOf1980, type VolumeCorrectionInput } from '../../../core/volume-correction/index.ts'
import { must } from '../../support/must.ts'
import { checkPublishedRows, inputOf } from '../../support/published-rows.ts'
import { referenceDensities, referenceRatios } from '../../support/reference-densities.ts'

const FUEL: VolumeCorrectionInput = { commodity: 'ethanol', density: { value: '793.0 kg/m3' }, baseTemperature: '60 degF', temperature: '84 degF' }
const MIXTURE: VolumeCorrectionInput = { commodity: 'ethanol', edition: 'OIML-R22', content: '96.0 %', baseTemperature: '20 degC', temperature: '31.25 degC' }

// OIML R 22 and the Canadian table made from it; the latter weighs in air of a little under 1.2 kg/m³ against weights of 8000
checkPublishedRows('ethanol/oiml-r22.json', (row, { name }) => {
  const density = ethanolWaterDensity(Number(inputOf(row, 'ethanol mass fraction').value), Number(inputOf(row, 'temperature').value))
  return name === 'density' ? density : densityInAir(new Decimal(density)).div(1000)
})

describe('OIML R 22: ethanol and water', () => {
  it('gives the Canadian table’s 0.7881589894 g/cm³ in air to 10⁻⁶, whatever air it was weighed in', () => {
    expect(densityInAir(new Decimal(ethanolWaterDensity(1, 20))).div(1000).minus('0.7881589894').abs().toNumber()).toBeLessThan(1e-6)
  })

  // water of OIML R 22 is that of Wagenbreth and Blanke to 0.003 kg/m³ between 0 and 40 °C
  it('is water where there is no ethanol', () => {
    for (let t = 0; t <= 40; t += 5) expect(Math.abs(ethanolWaterDensity(0, t) - waterDensityOf1980(t)), `${t} °C`).toBeLessThan(0.004)
  })

  // reference equation of state of ethanol: densities within 0.03 %, ratios to 20 °C within 0.00006
  it('is pure ethanol where there is no water', () => {
    for (const [t, density] of referenceDensities('pure ethanol')) expect(Math.abs(ethanolWaterDensity(1, t) / density - 1), `${t} °C`).toBeLessThan(3e-4)
    for (const [t, ratio] of referenceRatios('pure ethanol', 20)) expect(Math.abs(ethanolWaterDensity(1, t) / ethanolWaterDensity(1, 20) - ratio), `${t} °C`).toBeLessThan(6e-5)
  })

  it('falls with temperature, and with the share of ethanol', () => {
    fc.assert(fc.property(fc.double({ min: 0.31, max: 1, noNaN: true }), fc.double({ min: -20, max: 39, noNaN: true }), (p, t) => {
      expect(ethanolWaterDensity(p, t + 1)).toBeLessThan(ethanolWaterDensity(p, t))
      if (p < 0.99) expect(ethanolWaterDensity(p + 0.01, t)).toBeLessThan(ethanolWaterDensity(p, t))
    }))
  })

  it('knows the density itself; one that is observed is taken to base along the same mixture', () => {
    const itself = must(correctVolume(MIXTURE))
    expect(itself.unrounded.baseDensity).toBe(ethanolWaterDensity(0.96, 20))
    expect(itself.unrounded.ctl).toBe(ethanolWaterDensity(0.96, 31.25) / ethanolWaterDensity(0.96, 20))
    const observed = must(correctVolume({ ...MIXTURE, density: { value: '795.0 kg/m3', temperature: '27 degC' } }))
    expect(observed.unrounded.baseDensity).toBeCloseTo(795 * ethanolWaterDensity(0.96, 20) / ethanolWaterDensity(0.96, 27), 9)
  })
})

describe('40 CFR 80.1426(f)(8)(i): fuel ethanol to 60 °F (constant from memory)', () => {
  it('84 °F: 1.0378 − 0.0006301 × 84 = 0.9848716 (worked by hand)', () => {
    expect(fuelEthanolVcf(84)).toBeCloseTo(0.9848716, 12)
    const output = must(correctVolume(FUEL))
    expect([output.ctl, output.ctpl, output.standard]).toEqual(['0.98487', '0.98487', '40 CFR 80.1426(f)(8), ethanol'])
  })

  it('is 1 at 60 °F to five decimals only by rounding (0.999994)', () => {
    expect(must(correctVolume({ ...FUEL, temperature: '60 degF' })).ctl).toBe('0.99999')
  })

  // pure ethanol by its reference equation of state; the rule is a straight line
  it('stays within 0.0022 of pure ethanol between 0 and 120 °F', () => {
    for (const [t, ratio] of referenceRatios('ethanol', 60)) expect(Math.abs(fuelEthanolVcf(t) - ratio), `${t} °F`).toBeLessThan(0.0022)
  })
})
