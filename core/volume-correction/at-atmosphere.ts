import { accepted, allOf, andThen, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { display } from '../rounding/index.ts'
import type { Citation } from '../sources.ts'
import { degC, degF, kilopascalsGauge, parsePressure, parseTemperature, type Pressure, type Temperature, type TemperatureUnit } from '../units/index.ts'
import type { ConditionPaths, Conditions, WrittenConditions } from './family.ts'

/** Temperatures between which an equation holds, both ends included, in the unit in which its source states them. */
export interface TemperatureLimits {
  readonly from: number
  readonly to: number
  readonly unit: TemperatureUnit
  readonly clause: Citation
}

/** Most gauge pressure of a liquid whose compressibility is not published [kPa]: it changes its volume by less than half of 0.00001. */
const NEARLY_ATMOSPHERE = 4

/** What a liquid under the atmosphere says of its CPL. */
export const NO_COMPRESSIBILITY = 'no effect of pressure is published for this liquid; it stands under the atmosphere, to within 4 kPa'

/**
 * Temperature and pressure of a liquid of which no effect of pressure is published: within the limits of its equation, and
 * under the atmosphere to within 4 kPa, which at 10⁻⁶ per kPa is less than half of the last digit of a factor.
 * Refuses `unreadable-value`, `unit-not-accepted`, `out-of-range`.
 * @param written temperature and pressure
 * @param paths where they stood
 * @param limits of the equation
 * @source COMMON-PRACTICE liquids under the atmosphere
 */
export function readAtAtmosphere(written: WrittenConditions, paths: ConditionPaths, limits: TemperatureLimits): Outcome<Conditions> {
  const temperature = andThen(parseTemperature(written.temperature, paths.temperature), (read) => within(read, paths.temperature, limits))
  return allOf({ temperature, pressure: readLowPressure(written.pressure, paths.pressure) })
}

function readLowPressure(text: string | undefined, path: string): Outcome<Pressure | null> {
  if (text === undefined) return accepted(null)
  return andThen(parsePressure(text, path), (pressure) => {
    if (Math.abs(kilopascalsGauge(pressure)) <= NEARLY_ATMOSPHERE) return accepted<Pressure | null>(pressure)
    return refused({ code: 'out-of-range', path, value: text, limit: `-${NEARLY_ATMOSPHERE} to ${NEARLY_ATMOSPHERE} kPa gauge: no effect of pressure is published for this liquid`, clause: 'COMMON-PRACTICE' })
  })
}

/**
 * A temperature that lies between limits; `out-of-range` otherwise.
 * @param temperature as read
 * @param path where it stood
 * @param limits both ends included
 * @source COMMON-PRACTICE limits hold as written, unrounded
 */
export function within(temperature: Temperature, path: string, limits: TemperatureLimits): Outcome<Temperature> {
  const t = limits.unit === 'degF' ? degF(temperature) : degC(temperature)
  return t >= limits.from && t <= limits.to ? accepted(temperature) : refused(outside(temperature, path, limits))
}

function outside(temperature: Temperature, path: string, limits: TemperatureLimits): Finding {
  return { code: 'out-of-range', path, value: temperature.text, limit: limitsInWords(limits, temperature.unit), clause: limits.clause }
}

/** Limits as their source states them and, where that differs, in the unit that was written, to 0.1. */
function limitsInWords({ from, to, unit }: TemperatureLimits, written: TemperatureUnit): string {
  const stated = `${from} to ${to} ${unit}`
  if (unit === written) return stated
  const other = (t: number): string => display(written === 'degC' ? (t - 32) / 1.8 : 1.8 * t + 32, 1)
  return `${other(from)} to ${other(to)} ${written} (${stated})`
}
