import { describe, expect, it } from 'vitest'
import {
  convertVolume, Decimal, degC, degF, densityIn, kilogramsPerCubicMetre, kilograms, kilopascalsGauge, massIn, parseDensity, parseExpansion,
  parseMass, parsePressure, parseTemperature, perDegF, psig,
} from '../../../core/units/index.ts'
import { must } from '../../support/must.ts'

describe('temperature', () => {
  // definition of the Fahrenheit scale: t°F = 1.8 t°C + 32 (MPMS 11.1-2004, 11.1.5.1)
  it.each([['0 degC', 32], ['100 degC', 212], ['-40 degC', -40], ['15 degC', 59], ['20 degC', 68], ['-50 degC', -58], ['150 degC', 302], ['0.1 degC', 32.18]])('%s is %d °F', (text, f) => {
    expect(degF(must(parseTemperature(text, 't')))).toBe(f)
  })

  it.each([['32 degF', 0], ['59 degF', 15], ['68 degF', 20], ['-40 degF', -40]])('%s is %d °C', (text, c) => {
    expect(degC(must(parseTemperature(text, 't')))).toBe(c)
  })
})

describe('pressure', () => {
  // MPMS 11.1-2004, 11.1.5.1: 1 psi = 6.894757 kPa = 0.06894757 bar; 1500 psi = 10342.1355 kPa
  it.each([['1500 psi', 10342.1355], ['100 kPa', 100], ['1 bar', 100], ['101.325 kPaa', 0], ['1.01325 bara', 0], ['0 kPaa', -101.325]])('%s is %d kPa gauge', (text, kPa) => {
    expect(kilopascalsGauge(must(parsePressure(text, 'p')))).toBeCloseTo(kPa, 9)
  })

  it.each([['6.894757 kPa', 1], ['0.06894757 bar', 1], ['12.5 psi', 12.5], ['108.219757 kPaa', 1]])('%s is %d psi gauge', (text, psi) => {
    expect(psig(must(parsePressure(text, 'p')))).toBeCloseTo(psi, 12)
  })
})

describe('density', () => {
  // MPMS 11.1-2004, 11.1.5.1: °API = 141.5 / RD − 131.5, water at 60 °F 999.016 kg/m³: 10 °API is water
  it.each([['10 degAPI', 999.016], ['1 RD', 999.016], ['0.8453 g/cm3', 845.3], ['845.3 kg/m3', 845.3]])('%s is %d kg/m³', (text, rho) => {
    expect(kilogramsPerCubicMetre(must(parseDensity(text, 'd')))).toBeCloseTo(rho, 10)
  })

  it('comes back in every unit', () => {
    for (const text of ['31.4 degAPI', '0.8682 RD', '0.8453 g/cm3', '845.3 kg/m3']) {
      const density = must(parseDensity(text, 'd'))
      expect(densityIn(kilogramsPerCubicMetre(density), density.unit)).toBeCloseTo(density.value.toNumber(), 11)
    }
  })
})

describe('volume and mass', () => {
  // NIST Handbook 44, Appendix C: 1 bbl = 42 gal, 1 gal = 231 in³ = 3.785411784 L, 1 lb = 0.45359237 kg, all exact
  it('converts exactly', () => {
    expect(convertVolume(new Decimal(1), 'bbl', 'gal').toFixed()).toBe('42')
    expect(convertVolume(new Decimal(1), 'gal', 'L').toFixed()).toBe('3.785411784')
    expect(convertVolume(new Decimal(1000), 'L', 'm3').toFixed()).toBe('1')
    expect(kilograms(must(parseMass('1 long-ton', 'm'))).toFixed()).toBe('1016.0469088')
    expect(massIn(new Decimal('0.45359237'), 'lb').toFixed()).toBe('1')
    expect(massIn(new Decimal('907.18474'), 'short-ton').toFixed()).toBe('1')
  })
})

describe('expansion', () => {
  // MPMS 11.1-2004, 11.1.5.1: α per °F = α per °C / 1.8
  it.each([['0.000510 /degF', 0.00051], ['0.000918 /degC', 0.00051], ['0.00051 per °F', 0.00051]])('%s is %d per °F', (text, alpha) => {
    expect(perDegF(must(parseExpansion(text, 'alpha')))).toBe(alpha)
  })
})
