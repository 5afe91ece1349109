import { describe, expect, it } from 'vitest'
import { computeBlend, EMPTY_BLEND, withBatch } from '../../../renderer/density/blend-form.ts'
import { computeConversion, EMPTY_CONVERSION } from '../../../renderer/density/conversion-form.ts'
import { EMPTY_LIQUID } from '../../../renderer/density/liquid-form.ts'
import { computeMass, EMPTY_MASS } from '../../../renderer/density/mass-form.ts'
import { nameIn } from '../../../renderer/density/place-on-fields.ts'
import { computeWater, EMPTY_WATER } from '../../../renderer/density/water-form.ts'

describe('a density in every way of writing it', () => {
  it('10 °API is relative density 1 by definition, and 999.016 kg/m³ at 60 °F (API MPMS 11.1-2004, 11.1.5.1)', () => {
    const { value } = computeConversion({ ...EMPTY_LIQUID, baseTemperature: '60 degF', density: '10' }, EMPTY_CONVERSION)
    expect(value).toMatchObject({ api: { value: '10.00', unit: 'degAPI' }, relativeDensity: { value: '1.00000', unit: 'RD' }, density60: { value: '999.02', unit: 'kg/m3' } })
  })

  it('takes a meter factor only where a meter was read', () => {
    const metered = { ...EMPTY_LIQUID, density: '845.0', instrument: 'meter', densityTemperature: '15' } as const
    const factor = { ...EMPTY_CONVERSION, meter: 'factor', meterFactor: '1.0012' } as const
    // 845.0 × 1.0012 = 846.014, arithmetic
    expect(computeConversion(metered, factor).value).toMatchObject({ meterFactor: '1.0012', density15: { value: '846.01' } })
    expect(computeConversion({ ...metered, instrument: 'base' }, factor).value).toMatchObject({ meterFactor: null, density15: { value: '845.00' } })
  })

  it('asks for both densities of a proving', () => {
    const { missing } = computeConversion({ ...EMPTY_LIQUID, density: '845.0', instrument: 'meter', densityTemperature: '15' }, { ...EMPTY_CONVERSION, meter: 'proving' })
    expect(missing.toSorted()).toEqual(['conversion-provingMeter', 'conversion-provingReference'])
  })
})

describe('a blend', () => {
  const two = withBatch(withBatch(EMPTY_BLEND, 0, { density: '800', amount: '1000' }), 1, { density: '900', amount: '900 t' })

  it('is of volumes and of masses, by the unit behind each: (800 t + 900 t) / 2000 m³ = 850 kg/m³, arithmetic', () => {
    expect(computeBlend(two).value).toMatchObject({ density: { value: '850.00' }, volume: { value: '2000.000', unit: 'm3' }, mass: { value: '1700000', unit: 'kg' } })
  })

  it('passes over empty lines and still names the others by their line', () => {
    const withGap = { ...two, batches: [two.batches[0]!, { name: '', density: '', amount: '' }, { ...two.batches[1]!, density: '90' }] }
    const { findings, places } = computeBlend(withGap)
    expect(findings.map(({ field }) => field)).toEqual(['blend-2-density'])
    expect(nameIn(places)('blend-2-density')).toBe('Batch 3: base density')
  })

  it('needs two batches', () => {
    expect(computeBlend(EMPTY_BLEND)).toMatchObject({ value: undefined, findings: [], missing: ['blend-0-density', 'blend-0-amount', 'blend-1-density', 'blend-1-amount'] })
  })
})

describe('mass and weight', () => {
  it('ASTM D1250-80, Table 13: 10 °API, 3.7776 t in air for 1000 gal', () => {
    const { value } = computeMass({ ...EMPTY_MASS, baseTemperature: '60 degF', density: '10', amount: '1000 gal', convention: 'tables-1980' })
    expect(value?.weightInAir.find(({ unit }) => unit === 'kg')?.value).toBe('3778')
    expect(Number(value?.unrounded.weightKg)).toBeCloseTo(3777.6, 1)
  })

  it.each(['volume', 'mass', 'weight'] as const)('goes from %s to the others', (of) => {
    const { value } = computeMass({ ...EMPTY_MASS, density: '845.3', of, amount: '1000' })
    expect([value?.massInVacuum.length, value?.weightInAir.length, value?.volume.length]).toEqual([5, 5, 4])
  })

  it('an empty sheet needs density and amount', () => {
    expect(computeMass(EMPTY_MASS)).toMatchObject({ findings: [], missing: ['mass-density', 'mass-amount'] })
  })
})

describe('water', () => {
  it('UNESCO technical paper 44: 35 PSU at 5 °C (IPTS-68), 1027.67547 kg/m³', () => {
    const { value } = computeWater({ ...EMPTY_WATER, temperature: '4.9988', salinity: '35' })
    expect(value?.unrounded.density).toBeCloseTo(1027.67547, 4)
  })

  it('knows fresh water without being told an equation: 999.016 kg/m³ at 60 °F (API MPMS 11.1-2004, 11.1.5.1)', () => {
    expect(computeWater({ ...EMPTY_WATER, temperature: '60 degF' }).value?.density).toEqual({ value: '999.016', unit: 'kg/m3' })
  })

  it('says salt beside its field where the equation has none', () => {
    expect(computeWater({ ...EMPTY_WATER, temperature: '15', salinity: '35', equation: 'MPMS-11.4.1' }).findings.map(({ field }) => field)).toEqual(['water-salinity'])
  })
})
