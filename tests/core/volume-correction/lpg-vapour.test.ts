import { describe, expect, it } from 'vitest'
import { Decimal } from '../../../core/units/index.ts'
import { liquidEquivalent, readVapour, type WrittenVapour } from '../../../core/volume-correction/lpg-vapour.ts'
import { must } from '../../support/must.ts'

const AT = { volume: 'volume', temperature: 'temperature', pressure: 'pressure', molarMass: 'molarMass', compressibility: 'compressibility' }
const SPHERE: WrittenVapour = { volume: '1000 m3', temperature: '15 degC', pressure: '6.3 bar', molarMass: '44.096 g/mol' }
const counted = (part: Partial<WrittenVapour>, baseDensity = '508.0', unit: 'm3' | 'bbl' = 'm3') => liquidEquivalent(must(readVapour({ ...SPHERE, ...part }, AT)), new Decimal(baseDensity), unit)

describe('vapour of a pressure vessel as liquid', () => {
  it('by hand, as an ideal gas: 1000 m³ of propane at 15 °C and 1 bar absolute', () => {
    // 44.096 g/mol × 100 kPa / (8.314462618 J/(mol K) × 288.15 K) = 1.84057 kg/m³; × 1000 m³ = 1840.57 → 1841 kg; / 508.0 kg/m³ = 3.62402 m³
    const { density, mass, volume } = counted({ pressure: '1 bara', compressibility: '1' })
    expect([density.text, mass.text, volume.text]).toEqual(['1.841', '1841', '3.624'])
  })

  it('by hand, with a compressibility factor that was agreed: twice the density at half the factor', () => {
    // 44.096 × 100 / (0.5 × 8.314462618 × 288.15) = 3.68114 kg/m³
    expect(counted({ pressure: '1 bara', compressibility: '0.5' }).density.text).toBe('3.681')
  })

  it('by hand: gauge pressure is counted from the standard atmosphere', () => {
    // 44.096 × 101.325 / (8.314462618 × 273.15) = 1.96736 kg/m³
    expect(counted({ pressure: '0 kPa', temperature: '0 degC', compressibility: '1' }).density.text).toBe('1.967')
  })

  it('at 0 °C and one atmosphere a mole of ideal gas fills 22.414 litres', () => {
    // 44.096 g/mol / 1.96736 kg/m³ = 22.414 L/mol (CODATA: 22.41396954 L/mol)
    expect(44.096 / Number(counted({ pressure: '0 kPa', temperature: '0 degC', compressibility: '1' }).density.unrounded)).toBeCloseTo(22.41396954, 6)
  })

  it('saturated propane at 20 °C, 8.365 bar: 18.02 kg/m³ by the reference equation, to 1 %', () => {
    // Z 0.8369 of CoolProp 8.0.0 (row library/vapour/propane/20): 44.0956 × 836.5 / (0.8369 × 8.314463 × 293.15) = 18.08 kg/m³
    const { density } = counted({ temperature: '20 degC', pressure: '8.365 bara' })
    expect(Math.abs(density.value.toNumber() / 18.08 - 1)).toBeLessThan(0.01)
  })

  it('the gas of a mixture lies between the two on either side of it', () => {
    const [propane, mixture, butane] = ['44.096', '51.0', '58.122'].map((M) => Number(must(readVapour({ ...SPHERE, pressure: '1.5 bara', molarMass: `${M} g/mol` }, AT)).Z))
    expect(propane).toBeGreaterThan(mixture!)
    expect(mixture).toBeGreaterThan(butane!)
  })

  it('approaches the ideal gas as the pressure falls', () => {
    for (const [bar, share] of [['0.5', 0.02], ['0.05', 0.002], ['0.005', 0.0002]] as const) expect(1 - must(readVapour({ ...SPHERE, pressure: `${bar} bara` }, AT)).Z).toBeLessThan(share)
  })

  it('the worksheet can be gone through with a pocket calculator', () => {
    const { lines, density, mass, volume } = counted({ volume: '2594.5 bbl' }, '508.0', 'bbl')
    const value = (symbol: string): number => Number(lines.find((line) => line.symbol === symbol)?.value)
    expect(lines.map((line) => line.symbol)).toEqual(['Vv', 'tv', 'Pv', 'M', 'Z', 'R', 'ρv', 'mv', 'VLE'])
    const Pv = value('Pv') * 100 + 101.325
    expect(Math.abs((value('M') * Pv) / (value('Z') * value('R') * (value('tv') + 273.15)) - value('ρv'))).toBeLessThanOrEqual(0.0005)
    expect(Math.abs(value('ρv') * value('Vv') * 0.158987294928 - value('mv'))).toBeLessThanOrEqual(0.5)
    expect(Math.abs(value('mv') / 508 / 0.158987294928 - value('VLE'))).toBeLessThanOrEqual(0.005)
    expect([density.text, mass.text, volume.text]).toEqual([lines[6]?.value, lines[7]?.value, lines[8]?.value])
  })

  it('each line comes from lines above it, and VLE from the base density of the liquid', () => {
    const { lines } = counted({})
    const known = new Set(['ρb'])
    for (const line of lines) {
      expect(line.from.filter((symbol) => !known.has(symbol))).toEqual([])
      known.add(line.symbol)
    }
  })

  it('a factor that was agreed stands as written, and is used as written', () => {
    const { lines, density } = counted({ pressure: '1 bara', compressibility: '0.97531' })
    expect(lines.find((line) => line.symbol === 'Z')).toMatchObject({ value: '0.97531', rounding: 'as written', notes: ['as agreed'] })
    // 1.84057 / 0.97531 = 1.88717
    expect(density.text).toBe('1.887')
  })
})
