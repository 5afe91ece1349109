import type { Outcome } from '../refusal/index.ts'
import { printMeasured, readMeasured, type Measured, type UnitWords } from './measured-value.ts'

export type ExpansionUnit = '/degF' | '/degC'
/** A thermal expansion factor: a share of the volume per degree. */
export type Expansion = Measured<ExpansionUnit>

const WORDS: UnitWords<ExpansionUnit> = {
  '/degF': ['/°f', '/f', 'per degf', 'per °f'],
  '/degC': ['/°c', '/c', 'per degc', 'per °c'],
}

/** Reads `0.000510 /degF`, `0.000918 /degC`. */
export function parseExpansion(text: string, path: string): Outcome<Expansion> {
  return readMeasured(text, path, WORDS, 'a thermal expansion factor as 0.000510 /degF or 0.000918 /degC')
}

/** α per °F = α per °C / 1.8. @source MPMS-11.1-2004 11.1.5.1 */
export function perDegF(expansion: Expansion): number {
  return (expansion.unit === '/degF' ? expansion.value : expansion.value.div('1.8')).toNumber()
}

/** The canonical spelling: `0.00051 /degF`. */
export function printExpansion(expansion: Expansion): string {
  return printMeasured(expansion.value, expansion.unit)
}
