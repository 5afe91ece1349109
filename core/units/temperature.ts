import type { Outcome } from '../refusal/index.ts'
import { printMeasured, readMeasured, type Measured, type UnitWords } from './measured-value.ts'

export type TemperatureUnit = 'degC' | 'degF'
export type Temperature = Measured<TemperatureUnit>

declare const unit: unique symbol
/** A temperature in °F as a double, for standard-defined functions. */
export type DegF = number & { readonly [unit]: 'degF' }
/** A temperature in °C as a double, for standard-defined functions. */
export type DegC = number & { readonly [unit]: 'degC' }

const WORDS: UnitWords<TemperatureUnit> = { degC: ['°c', 'c', 'deg c', 'º c', '° c'], degF: ['°f', 'f', 'deg f', 'º f', '° f'] }

/** Reads `88.3 degF`, `31.25 °C`. */
export function parseTemperature(text: string, path: string): Outcome<Temperature> {
  return readMeasured(text, path, WORDS, 'a temperature as 88.3 degF or 31.25 degC')
}

/** t°F = 1.8 t°C + 32. @source MPMS-11.1-2004 11.1.5.1 */
export function degF(temperature: Temperature): DegF {
  const value = temperature.unit === 'degF' ? temperature.value : temperature.value.times('1.8').plus(32)
  return value.toNumber() as DegF
}

/** t°C = (t°F − 32) / 1.8. @source MPMS-11.1-2004 11.1.5.1 */
export function degC(temperature: Temperature): DegC {
  const value = temperature.unit === 'degC' ? temperature.value : temperature.value.minus(32).div('1.8')
  return value.toNumber() as DegC
}

/** The canonical spelling: digits, a blank, the unit word; reading it gives the same temperature back. */
export function printTemperature(temperature: Temperature): string {
  return printMeasured(temperature.value, temperature.unit)
}
