import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { blendDensity, NO_SHRINKAGE, type BlendDensityInput } from '../../../core/volume-correction/index.ts'
import { must } from '../../support/must.ts'

const BLEND: BlendDensityInput = { baseTemperature: '15 degC', batches: [{ name: 'diesel', density: '835.0 kg/m3', volume: '9300 m3' }, { name: 'biodiesel', density: '883.0 kg/m3', volume: '700 m3' }] }

describe('density of a blend by mass', () => {
  // worked by hand: (9300 × 835 + 700 × 883) / 10000 = (7 765 500 + 618 100) / 10000 = 838.36
  it('seven parts of biodiesel in a hundred: 838.36 kg/m³, 8 383 600 kg', () => {
    const output = must(blendDensity(BLEND))
    expect([output.density, output.volume, output.mass]).toEqual([{ value: '838.36', unit: 'kg/m3' }, { value: '10000.000', unit: 'm3' }, { value: '8383600', unit: 'kg' }])
  })

  it('says that shrinkage is not computed', () => {
    expect(must(blendDensity(BLEND)).worksheet.find((line) => line.symbol === 'ρb')?.notes).toContain(NO_SHRINKAGE)
  })

  it('a batch given by mass counts like the same batch by volume', () => {
    const byMass = must(blendDensity({ ...BLEND, batches: [BLEND.batches[0]!, { density: '883.0 kg/m3', mass: '618.1 t' }] }))
    expect(byMass.unrounded.density).toBe(must(blendDensity(BLEND)).unrounded.density)
  })

  it('a volume or mass that follows from the other is printed to its discrimination, with the unrounded value beside it (worked by hand)', () => {
    const { worksheet } = must(blendDensity({ baseTemperature: '15 degC', batches: [{ density: '835.7 kg/m3', volume: '1250.333 m3' }, { density: '883.0 kg/m3', mass: '551.1 t' }] }))
    const line = (symbol: string) => worksheet.find((one) => one.symbol === symbol)
    // 1250.333 × 835.7 = 1 044 903.2881 kg
    expect(line('m1')).toMatchObject({ value: '1044903', unrounded: '1044903.2881', rounding: '1, half away from zero', unit: 'kg', from: ['V1', 'ρ1'] })
    // 551 100 / 883 = 624.122310… m³
    expect(line('V2')).toMatchObject({ value: '624.122', rounding: '0.001, half away from zero', unit: 'm3', from: ['m2', 'ρ2'] })
    expect(line('V2')?.unrounded).toMatch(/^624\.122310/)
    // 1 044 903.2881 + 551 100 = 1 596 003.2881; 1250.333 + 624.122310 = 1874.455310
    expect([line('Σm')?.value, line('ΣV')?.value]).toEqual(['1596003', '1874.455'])
    expect(worksheet.every(({ value }) => value.length <= 12)).toBe(true)
  })

  it('sums the unrounded masses: three batches of 0.4 kg make 1 kg, not none', () => {
    // 3 × 0.0005 m³ × 800 kg/m³ = 1.2 kg
    const { worksheet, mass, unrounded } = must(blendDensity({ baseTemperature: '15 degC', batches: [1, 2, 3].map(() => ({ density: '800 kg/m3', volume: '0.0005 m3' })) }))
    expect([mass.value, unrounded.mass]).toEqual(['1', '1.2'])
    expect(worksheet.find(({ symbol }) => symbol === 'Σm')?.notes).toEqual(['from the unrounded masses'])
  })

  it('in °API at 60 °F, barrels: 1000 bbl of 30 and 1000 bbl of 40 °API are 34.85, not 35', () => {
    // 141.5/161.5 = 0.8761610, 141.5/171.5 = 0.8250729; mean 0.8506169; 141.5/0.8506169 − 131.5 = 34.8506
    const output = must(blendDensity({ baseTemperature: '60 degF', volumeUnit: 'bbl', batches: [{ density: '30 degAPI', volume: '1000 bbl' }, { density: '40 degAPI', volume: '1000 bbl' }] }))
    expect([output.density.value, output.volume.value]).toEqual(['34.85', '2000.00'])
  })

  it('lies between its batches, whatever their order', () => {
    const batch = fc.record({ density: fc.integer({ min: 6000, max: 10000 }).map((d) => `${d / 10} kg/m3`), volume: fc.integer({ min: 1, max: 100_000 }).map((v) => `${v} bbl`) })
    fc.assert(fc.property(fc.array(batch, { minLength: 2, maxLength: 8 }), (batches) => {
      const { unrounded, density } = must(blendDensity({ baseTemperature: '15 degC', batches }))
      const densities = batches.map((one) => Number.parseFloat(one.density))
      expect(Number(unrounded.density)).toBeGreaterThanOrEqual(Math.min(...densities) - 1e-9)
      expect(Number(unrounded.density)).toBeLessThanOrEqual(Math.max(...densities) + 1e-9)
      expect(must(blendDensity({ baseTemperature: '15 degC', batches: batches.toReversed() })).density).toEqual(density)
    }))
  })
})
