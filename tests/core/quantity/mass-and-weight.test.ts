import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { massAndWeight, type MassAndWeightInput } from '../../../core/quantity/index.ts'
import { display } from '../../../core/rounding/index.ts'
import { must } from '../../support/must.ts'
import { DISAGREEMENTS, inputOf, publishedRows } from '../../support/published-rows.ts'

const CARGO: MassAndWeightInput = { baseTemperature: '15 degC', density: '850.0 kg/m3', volume: '1000.000 m3' }
const kgOf = (text: string, per: number, decimals: number): string => display(Number(text) / per, decimals)

describe('mass in vacuum and weight in air', () => {
  // API MPMS 11.5 (2009): D = 1.000149926 × 850 − 1.199407795 = 848.9280293
  it('1000 m³ of 850 kg/m³: 850 000 kg in vacuum, 848 928 kg in air, in every unit', () => {
    const output = must(massAndWeight(CARGO))
    expect(output.massInVacuum).toEqual([{ value: '850000', unit: 'kg' }, { value: '850.000', unit: 't' }, { value: '1873929', unit: 'lb' }, { value: '936.965', unit: 'short-ton' }, { value: '836.576', unit: 'long-ton' }])
    expect(output.weightInAir.slice(0, 2)).toEqual([{ value: '848928', unit: 'kg' }, { value: '848.928', unit: 't' }])
    expect(output.densityInAir).toEqual({ value: '848.93', unit: 'kg/m3' })
    expect(output.convention).toMatch(/^API MPMS 11.5 \(2009\)/)
  })

  // ASTM D1250-80 Table 13: °API at 60 °F → metric tons in air per 1000 US gallons and per barrel
  it.each(publishedRows('d1250-80/table-13.json'))('$id by the tables of 1980', (row) => {
    const weigh = (volume: string): string => must(massAndWeight({ baseTemperature: '60 degF', density: `${inputOf(row, 'API gravity at 60F').value} degAPI`, volume, convention: 'tables-1980' })).unrounded.weightKg
    for (const { name, value } of row.expected) expect(name.includes('barrel') ? kgOf(weigh('1 bbl'), 1000, 5) : kgOf(weigh('1000 gal'), 1000, 4), name).toBe(value)
  })

  // Table 11: long tons in air
  it.each(publishedRows('d1250-80/table-11.json'))('$id by the tables of 1980', (row) => {
    const weigh = (volume: string): string => must(massAndWeight({ baseTemperature: '60 degF', density: `${inputOf(row, 'API gravity at 60F').value} degAPI`, volume, convention: 'tables-1980' })).unrounded.weightKg
    for (const { name, value } of row.expected) {
      const got = name.includes('barrel') ? kgOf(weigh('1 bbl'), 1016.0469088, 5) : kgOf(weigh('1000 gal'), 1016.0469088, 4)
      const listed = DISAGREEMENTS.find((one) => one.row === row.id && one.quantity === name)
      if (listed === undefined) expect(got, name).toBe(value)
      else expect(got, `${name}: ${listed.why}`).not.toBe(value)
    }
  })

  it('from any one of the three come the same others', () => {
    fc.assert(fc.property(fc.integer({ min: 6000, max: 10500 }), fc.integer({ min: 1, max: 1_000_000 }), fc.constantFrom('MPMS-11.5', 'tables-1980', 'short-form'), (density, volume, convention) => {
      const given = { baseTemperature: '15 degC', density: `${density / 10} kg/m3`, convention } as const
      const first = must(massAndWeight({ ...given, volume: `${volume} L` })).unrounded
      const byMass = must(massAndWeight({ ...given, mass: `${first.massKg} kg` })).unrounded
      const byWeight = must(massAndWeight({ ...given, weight: `${Number(first.weightKg).toFixed(12)} kg` })).unrounded
      for (const other of [byMass, byWeight]) expect(Math.abs(Number(other.cubicMetres) / Number(first.cubicMetres) - 1)).toBeLessThan(1e-9)
      expect(Number(first.weightKg)).toBeLessThan(Number(first.massKg))
    }))
  })

  it('has every line from lines above it, whichever was given', () => {
    for (const given of [{ volume: '100 m3' }, { mass: '85 t' }, { weight: '85 t' }]) {
      const seen = new Set<string>()
      for (const line of must(massAndWeight({ baseTemperature: '15 degC', density: '850 kg/m3', ...given })).worksheet) {
        expect(line.from.filter((symbol) => !seen.has(symbol)), line.symbol).toEqual([])
        seen.add(line.symbol)
      }
    }
  })
})
