import type { Outcome } from '../refusal/index.ts'
import type { Decimal } from './decimal.ts'
import { printMeasured, readMeasured, type Measured, type UnitWords } from './measured-value.ts'

export const MASS_UNITS = ['kg', 't', 'lb', 'short-ton', 'long-ton'] as const
export type MassUnit = (typeof MASS_UNITS)[number]
export type Mass = Measured<MassUnit>

/** Kilograms per unit, exact (avoirdupois pound). @source NIST-HB44-C */
const KILOGRAMS: { readonly [U in MassUnit]: string } = { kg: '1', t: '1000', lb: '0.45359237', 'short-ton': '907.18474', 'long-ton': '1016.0469088' }

const WORDS: UnitWords<MassUnit> = { kg: [], t: ['tonne', 'tonnes'], lb: ['lbs', 'pounds'], 'short-ton': ['short ton', 'short tons'], 'long-ton': ['long ton', 'long tons'] }

/** Reads `551100 kg`, `551.1 t`, `1215000 lb`. */
export function parseMass(text: string, path: string): Outcome<Mass> {
  return readMeasured(text, path, WORDS, 'a mass as 551100 kg, 551.1 t or 1215000 lb')
}

/** Exact kilograms. */
export function kilograms(mass: Mass): Decimal {
  return mass.value.times(KILOGRAMS[mass.unit])
}

/** Kilograms in another unit, unrounded. */
export function massIn(kg: Decimal, unit: MassUnit): Decimal {
  return kg.div(KILOGRAMS[unit])
}

/** The canonical spelling: digits, a blank, the unit word; reading it gives the same mass back. */
export function printMass(mass: Mass): string {
  return printMeasured(mass.value, mass.unit)
}
