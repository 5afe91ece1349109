import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { biodieselVcf, correctVolume, methylEsterCtl, methylEsterDensityAt15, type VolumeCorrectionInput } from '../../../core/volume-correction/index.ts'
import { must } from '../../support/must.ts'
import { referenceDensities, referenceRatios } from '../../support/reference-densities.ts'

const BY_RULE: VolumeCorrectionInput = { commodity: 'biodiesel', density: { value: '880 kg/m3' }, baseTemperature: '60 degF', temperature: '95 degF' }
const BY_SLOPE: VolumeCorrectionInput = { commodity: 'biodiesel', edition: 'EN-14214', density: { value: '862.5 kg/m3', temperature: '40 degC' }, baseTemperature: '15 degC', temperature: '32 degC' }

describe('40 CFR 80.1426(f)(8)(ii): biodiesel to 60 °F (from memory)', () => {
  it('95 °F: 1.02746025 − 0.00045767 × 95 = 0.9839816 (worked by hand), 1 at 60 °F', () => {
    expect(biodieselVcf(95)).toBeCloseTo(0.9839816, 12)
    expect(must(correctVolume(BY_RULE)).ctl).toBe('0.98398')
    expect(must(correctVolume({ ...BY_RULE, temperature: '60 degF' })).ctl).toBe('1.00000')
  })

  // methyl oleate, the chief ester of rape and soya oil, by its reference equation of state
  it('stays within 0.0003 of methyl oleate between 40 and 140 °F', () => {
    for (const [t, ratio] of referenceRatios('methyl oleate', 60)) expect(Math.abs(biodieselVcf(t) - ratio), `${t} °F`).toBeLessThan(3e-4)
  })
})

describe('EN 14214 Annex B: ρ15 = ρt + 0.723 (t − 15) (from memory)', () => {
  it('862.5 kg/m³ at 40 °C: 862.5 + 0.723 × 25 = 880.575 at 15 °C; CTL at 32 °C = 1 − 0.723 × 17 / 880.575 = 0.98604', () => {
    expect(methylEsterDensityAt15(862.5, 40)).toBeCloseTo(880.575, 10)
    const output = must(correctVolume(BY_SLOPE))
    expect(output.baseDensity).toEqual({ value: '880.6', unit: 'kg/m3' })
    expect([output.ctl, output.standard]).toEqual(['0.98604', 'EN 14214, Annex B'])
  })

  // the slope of methyl oleate between 59 and 104 °F by its reference equation of state is 0.727 kg/m³ per °C
  it('has the slope of methyl oleate to 1 %', () => {
    const densities = referenceDensities('methyl oleate')
    const at = (t: number): number => densities.find(([one]) => one === t)![1]
    const slope = (at(59) - at(100)) / (41 / 1.8)
    expect(Math.abs(slope / 0.723 - 1)).toBeLessThan(0.01)
  })

  it('there and back', () => {
    fc.assert(fc.property(fc.double({ min: 860, max: 900, noNaN: true }), fc.double({ min: 15, max: 60, noNaN: true }), (density15, t) => {
      expect(methylEsterDensityAt15(density15 * methylEsterCtl(density15, t), t)).toBeCloseTo(density15, 9)
    }))
  })

  it('and the American rule agree to 0.0011 over 60 to 140 °F', () => {
    const at60 = methylEsterCtl(880, 5 / 9 + 15)
    for (let t = 60; t <= 140; t += 10) expect(Math.abs(methylEsterCtl(880, (t - 32) / 1.8) / at60 - biodieselVcf(t)), `${t} °F`).toBeLessThan(0.0011)
  })
})
