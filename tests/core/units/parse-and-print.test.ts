import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Outcome } from '../../../core/refusal/index.ts'
import {
  MASS_UNITS, parseDensity, parseExpansion, parseLength, parseMass, parsePercent, parsePressure, parseTemperature, parseVolume,
  printDensity, printExpansion, printLength, printMass, printPercent, printPressure, printTemperature, printVolume, VOLUME_UNITS,
  writtenDigits, type Measured,
} from '../../../core/units/index.ts'
import { must } from '../../support/must.ts'

const SEED = 20260402

type Kind = readonly [kind: string, units: readonly string[], there: (text: string) => Outcome<Measured<string>>, back: (text: string) => string]
const KINDS: readonly Kind[] = [
  ['length', ['m', 'cm', 'mm', 'in', 'ft'], (text) => parseLength(text, 'x'), (text) => printLength(must(parseLength(text, 'x')))],
  ['temperature', ['degC', 'degF'], (text) => parseTemperature(text, 'x'), (text) => printTemperature(must(parseTemperature(text, 'x')))],
  ['density', ['kg/m3', 'g/cm3', 'degAPI', 'RD'], (text) => parseDensity(text, 'x'), (text) => printDensity(must(parseDensity(text, 'x')))],
  ['volume', VOLUME_UNITS, (text) => parseVolume(text, 'x'), (text) => printVolume(must(parseVolume(text, 'x')))],
  ['mass', MASS_UNITS, (text) => parseMass(text, 'x'), (text) => printMass(must(parseMass(text, 'x')))],
  ['pressure', ['kPa', 'bar', 'psi', 'kPaa', 'bara', 'psia'], (text) => parsePressure(text, 'x'), (text) => printPressure(must(parsePressure(text, 'x')))],
  ['share', ['%'], (text) => parsePercent(text, 'x'), (text) => printPercent(must(parsePercent(text, 'x')))],
  ['expansion', ['/degF', '/degC'], (text) => parseExpansion(text, 'x'), (text) => printExpansion(must(parseExpansion(text, 'x')))],
]
const WORDS = KINDS.flatMap(([kind, units, there, back]) => units.map((unit) => ({ kind, unit, there, back })))

/** Digits without superfluous zeros: the canonical spelling of a decimal of up to 15 places. */
const canonical = fc.tuple(fc.boolean(), fc.integer({ min: 0, max: 999_999 }), fc.stringMatching(/^(?:\d{0,8}[1-9])?$/)).map(([negative, whole, decimals]) => {
  const digits = decimals === '' ? `${whole}` : `${whole}.${decimals}`
  return negative && /[1-9]/.test(digits) ? `-${digits}` : digits
})

describe.each(WORDS)('$kind in $unit', ({ unit, there, back }) => {
  it('prints what it read, for every canonical text', () => {
    fc.assert(fc.property(canonical, (digits) => {
      expect(back(`${digits} ${unit}`)).toBe(`${digits} ${unit}`)
    }), { seed: SEED, numRuns: 300 })
  })

  it('keeps the text that was written, zeros, blanks and all, beside the value', () => {
    const read = must(there(`  12.50${unit} `))
    expect(read).toMatchObject({ text: `  12.50${unit} `, unit })
    expect(read.value.toFixed()).toBe('12.5')
    expect(writtenDigits(read)).toBe('12.50')
  })

  it('reads its own printing as the same value', () => {
    fc.assert(fc.property(canonical, fc.constantFrom('', '0', '000'), (digits, zeros) => {
      const written = `${digits}${digits.includes('.') ? zeros : zeros === '' ? '' : `.${zeros}`} ${unit}`
      const read = must(there(written))
      expect(must(there(back(written))).value.equals(read.value)).toBe(true)
    }), { seed: SEED, numRuns: 200 })
  })
})

describe('other spellings of the units', () => {
  it.each([
    ['88.3 °F', 'degF'], ['88.3 deg F', 'degF'], ['31.25 °C', 'degC'], ['31.25c', 'degC'], ['−4.5 °C', 'degC'],
  ])('%s is a temperature in %s', (text, unit) => expect(must(parseTemperature(text, 't')).unit).toBe(unit))

  it.each([
    ['845.3 kg/m³', 'kg/m3'], ['0.8453 t/m3', 'g/cm3'], ['0.8453 kg/L', 'g/cm3'], ['31.4 °API', 'degAPI'], ['31.4 API', 'degAPI'], ['0.8682 SG', 'RD'], ['0.8682 RD', 'RD'],
  ])('%s is a density in %s', (text, unit) => expect(must(parseDensity(text, 'd')).unit).toBe(unit))

  it.each([
    ['12 psig', 'psi'], ['2.5 barg', 'bar'], ['350 kPa(g)', 'kPa'], ['101.3 kPa(a)', 'kPaa'], ['1.5 BARA', 'bara'],
  ])('%s is a pressure in %s', (text, unit) => expect(must(parsePressure(text, 'p')).unit).toBe(unit))

  it.each([
    ['12.5 m³', 'm3'], ['250 barrels', 'bbl'], ['10 gallons', 'gal'], ['1000 litres', 'L'],
  ])('%s is a volume in %s', (text, unit) => expect(must(parseVolume(text, 'v')).unit).toBe(unit))

  it('a minus sign and a no-break blank of a word processor are what they look like', () => {
    expect(must(parseTemperature('\u221212.5\u00a0°C', 't')).value.toFixed()).toBe('-12.5')
  })
})
