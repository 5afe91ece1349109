import { accepted, allOf, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import { display } from '../rounding/index.ts'
import {
  Decimal, densityIn, KPA_PER_PSI, parseExpansion, parsePressure, parseTemperature, STANDARD_ATMOSPHERE,
  type DensityUnit, type Expansion, type ExpansionUnit, type Pressure, type PressureUnit, type Temperature, type TemperatureUnit,
} from '../units/index.ts'
import { densityRange } from './bands.ts'
import type { Group } from './commodity.ts'
import type { ConditionPaths, Conditions, WrittenConditions } from './family.ts'

/** Temperatures for which the correction is made, in both units as the standard states them. @source MPMS-11.1-2004 11.1.3 */
export const TEMPERATURES: { readonly [U in TemperatureUnit]: readonly [string, string] } = { degF: ['-58', '302'], degC: ['-50', '150'] }

/** Highest gauge pressure, in every unit as the standard states it. @source MPMS-11.1-2004 11.1.3 */
const HIGHEST_PRESSURE = { psi: '1500', kPa: '10342', bar: '103.4' } as const

/** Thermal expansion factors at 60 °F of special applications. @source MPMS-11.1-2004 11.1.3 */
export const EXPANSIONS: { readonly [U in ExpansionUnit]: readonly [string, string] } = { '/degF': ['0.000230', '0.000930'], '/degC': ['0.000414', '0.001674'] }

const LIMITS = 'MPMS-11.1-2004 11.1.3'

/** The gauge unit that belongs to a pressure unit, and the standard atmosphere in it where the unit is absolute. */
const GAUGE: { readonly [U in PressureUnit]: { readonly unit: keyof typeof HIGHEST_PRESSURE; readonly atmosphere: Decimal | null } } = {
  psi: { unit: 'psi', atmosphere: null }, kPa: { unit: 'kPa', atmosphere: null }, bar: { unit: 'bar', atmosphere: null },
  psia: { unit: 'psi', atmosphere: new Decimal(STANDARD_ATMOSPHERE).div(KPA_PER_PSI) },
  kPaa: { unit: 'kPa', atmosphere: new Decimal(STANDARD_ATMOSPHERE) },
  bara: { unit: 'bar', atmosphere: new Decimal(STANDARD_ATMOSPHERE).div(100) },
}

/**
 * Reads a temperature for which the correction is made: −58 to 302 °F, −50 to 150 °C, as written and unrounded.
 * Refuses `unreadable-value`, `unit-not-accepted`, `out-of-range`.
 * @param text what was written
 * @param path where it stood
 * @source MPMS-11.1-2004 11.1.3
 * @checked mpms11.1-2004/11.1.6.1/ex9
 * @checked mpms11.1-2004/11.1.6.1/ex10
 */
export function readTemperature(text: string, path: string): Outcome<Temperature> {
  return andThen(parseTemperature(text, path), (temperature) => {
    const [low, high] = TEMPERATURES[temperature.unit]
    if (temperature.value.gte(low) && temperature.value.lte(high)) return accepted(temperature)
    return outOfRange(path, text, `${low} to ${high} ${temperature.unit}`)
  })
}

/**
 * Reads a pressure for which the correction is made: up to 1500 psi, 10342 kPa or 103.4 bar gauge, as written and
 * unrounded. Below the atmosphere it is accepted, since the standard then takes it as 0; below a vacuum it is not.
 * Refuses `unreadable-value`, `unit-not-accepted`, `out-of-range`.
 * @param text what was written
 * @param path where it stood
 * @source MPMS-11.1-2004 11.1.3
 * @checked mpms11.1-2004/11.1.7.2/ex15
 */
export function readPressure(text: string, path: string): Outcome<Pressure> {
  return andThen(parsePressure(text, path), (pressure) => {
    const { unit, atmosphere } = GAUGE[pressure.unit]
    const gauge = atmosphere === null ? pressure.value : pressure.value.minus(atmosphere)
    const vacuum = GAUGE[`${unit}a`].atmosphere?.negated() ?? 0
    if (gauge.gte(vacuum) && gauge.lte(HIGHEST_PRESSURE[unit])) return accepted(pressure)
    return outOfRange(path, text, `0 to ${HIGHEST_PRESSURE[unit]} ${unit} gauge; below the atmosphere it is taken as 0, below a vacuum there is none`)
  })
}

/**
 * Reads temperature and pressure for which the correction is made; no pressure stays null.
 * Refuses all that {@link readTemperature} and {@link readPressure} refuse.
 * @param written as written
 * @param paths where each stood
 * @source MPMS-11.1-2004 11.1.3
 */
export function readConditions({ temperature, pressure }: WrittenConditions, paths: ConditionPaths): Outcome<Conditions> {
  return allOf<{ temperature: Temperature; pressure: Pressure | null }>({
    temperature: readTemperature(temperature, paths.temperature),
    pressure: pressure === undefined ? accepted(null) : readPressure(pressure, paths.pressure),
  })
}

/**
 * Reads the thermal expansion factor of a special application: 230e-6 to 930e-6 per °F, 414e-6 to 1674e-6 per °C.
 * Refuses `unreadable-value`, `unit-not-accepted`, `out-of-range`.
 * @param text what was written
 * @param path where it stood
 * @source MPMS-11.1-2004 11.1.3
 */
export function readExpansion(text: string, path: string): Outcome<Expansion> {
  return andThen(parseExpansion(text, path), (expansion) => {
    const [low, high] = EXPANSIONS[expansion.unit]
    if (expansion.value.gte(low) && expansion.value.lte(high)) return accepted(expansion)
    return outOfRange(path, text, `${low} to ${high} ${expansion.unit}`)
  })
}

function outOfRange(path: string, value: string, limit: string): Outcome<never> {
  return refused({ code: 'out-of-range', path, value, limit, clause: LIMITS })
}

/** The range of a group as a refusal names it: at 60 °F, in the unit that was written, and in kg/m³. */
function rangeInWords(commodity: Group, unit: DensityUnit): string {
  const { from, to } = densityRange(commodity)
  const range = `${from} to ${to} kg/m3 at 60 degF for ${commodity}`
  switch (unit) {
    case 'kg/m3': return range
    case 'g/cm3': return `${display(densityIn(from, unit), 4)} to ${display(densityIn(to, unit), 4)} g/cm3 (${range})`
    case 'RD': return `${display(densityIn(from, unit), 4)} to ${display(densityIn(to, unit), 4)} RD (${range})`
    case 'degAPI': return `${display(densityIn(to, unit), 1)} to ${display(densityIn(from, unit), 1)} degAPI (${range})`
  }
}

/**
 * The finding for a density whose value at 60 °F is outside its commodity group. The limit is on the density at 60 °F,
 * not on the observed one. For special applications the range of crude and refined products is used.
 * @param commodity the group
 * @param written what was written
 * @param unit its unit
 * @param path where it stood
 * @source MPMS-11.1-2004 11.1.3
 * @checked mpms11.1-2004/11.1.6.2/ex16
 */
export function densityOutsideGroup(commodity: Group, written: string, unit: DensityUnit, path: string): Finding {
  return { code: 'density-outside-group', path, value: written, limit: rangeInWords(commodity, unit), clause: LIMITS }
}
