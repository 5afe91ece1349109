import { accepted, allOf, andThen, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { display } from '../rounding/index.ts'
import { Decimal, degF, KPA_PER_PSI, parsePressure, parseTemperature, psig, STANDARD_ATMOSPHERE, type Pressure, type PressureUnit, type Temperature, type TemperatureUnit } from '../units/index.ts'
import type { BaseTemperature } from './commodity.ts'
import type { ConditionPaths, Conditions, WrittenConditions } from './family.ts'
import { criticalTemperature } from './lpg-ctl.ts'

const SCOPE = 'MPMS-11.2.4-2007 scope'

/** Temperatures of the tables, in both units as the standard states them. @source MPMS-11.2.4-2007 scope */
export const LIGHT_TEMPERATURES: { readonly [U in TemperatureUnit]: readonly [string, string] } = { degF: ['-50.8', '199.4'], degC: ['-46', '93'] }

/** Densities of the tables as the standard states them: relative density at 60 °F, density at 15 and 20 °C [kg/m³]. @source MPMS-11.2.4-2007 scope */
export const LIGHT_DENSITIES: { readonly [B in BaseTemperature]: readonly [string, string] } = { '60 degF': ['0.3500', '0.6880'], '15 degC': ['351.7', '687.8'], '20 degC': ['331.7', '683.6'] }

/** Most gauge pressure: 2200 psi, from memory of the standard; the other units are computed from it and cut off. */
const HIGHEST: { readonly [U in PressureUnit]: { readonly value: string; readonly unit: string } } = {
  psi: { value: '2200', unit: 'psi' }, psia: { value: '2200', unit: 'psi' }, kPa: { value: '15168', unit: 'kPa' },
  kPaa: { value: '15168', unit: 'kPa' }, bar: { value: '151.6', unit: 'bar' }, bara: { value: '151.6', unit: 'bar' },
}
/** The standard atmosphere [psi]. */
export const ATMOSPHERE_PSI = STANDARD_ATMOSPHERE / KPA_PER_PSI

/**
 * Temperature and pressure of a light hydrocarbon: −50.8 to 199.4 °F, −46 to 93 °C; from a vacuum to 2200 psi gauge.
 * No pressure means that the liquid stands at its vapour pressure.
 * Refuses `unreadable-value`, `unit-not-accepted`, `out-of-range`.
 * @param written temperature and pressure
 * @param paths where they stood
 * @source MPMS-11.2.4-2007 scope
 * @source MPMS-11.2.2
 */
export function readLightConditions(written: WrittenConditions, paths: ConditionPaths): Outcome<Conditions> {
  const temperature = andThen(parseTemperature(written.temperature, paths.temperature), (read): Outcome<Temperature> => {
    const [low, high] = LIGHT_TEMPERATURES[read.unit]
    if (read.value.gte(low) && read.value.lte(high)) return accepted(read)
    return refused({ code: 'out-of-range', path: paths.temperature, value: read.text, limit: `${low} to ${high} ${read.unit}`, clause: SCOPE })
  })
  return allOf({ temperature, pressure: readPressure(written.pressure, paths.pressure) })
}

function readPressure(text: string | undefined, path: string): Outcome<Pressure | null> {
  if (text === undefined) return accepted(null)
  return andThen(parsePressure(text, path), (pressure): Outcome<Pressure | null> => {
    const { value, unit } = HIGHEST[pressure.unit]
    const most = new Decimal(value).toNumber() * (unit === 'psi' ? 1 : (unit === 'bar' ? 100 : 1) / KPA_PER_PSI)
    if (psig(pressure) >= -ATMOSPHERE_PSI && psig(pressure) <= most) return accepted(pressure)
    return refused({ code: 'out-of-range', path, value: text, limit: `from a vacuum to ${value} ${unit} gauge`, clause: 'MPMS-11.2.2' })
  })
}

/**
 * The finding for a density outside the tables, as its limits are stated for the base temperature.
 * @param base base temperature of the product
 * @param written what was written
 * @param path where it stood
 * @source MPMS-11.2.4-2007 scope
 */
export function lightDensityOutside(base: BaseTemperature, written: string, path: string): Finding {
  const [low, high] = LIGHT_DENSITIES['60 degF']
  const [from, to] = LIGHT_DENSITIES[base]
  const there = base === '60 degF' ? '' : `${from} to ${to} kg/m3 at ${base}, `
  return { code: 'density-outside-group', path, value: written, limit: `${there}${low} to ${high} RD at 60 degF for light hydrocarbons that are liquid at that temperature`, clause: SCOPE }
}

/**
 * The finding for a temperature at or above the critical temperature of a liquid; null below it.
 * @param RD60 relative density 60/60 °F
 * @param temperature as read
 * @param t as the tables are entered with it [°F]; neither may reach it
 * @param path where it stood
 * @source MPMS-11.2.4-2007 5.1.1.3
 */
export function aboveCritical(RD60: number, temperature: Temperature, t: number, path: string): Finding | null {
  const critical = criticalTemperature(RD60)
  if ((Math.max(degF(temperature), t) + 459.67) / 1.8 < critical) return null
  const inUnit = temperature.unit === 'degC' ? critical - 273.15 : critical * 1.8 - 459.67
  return { code: 'out-of-range', path, value: temperature.text, limit: `below ${display(inUnit, 1)} ${temperature.unit}, the critical temperature of a liquid of ${display(RD60, 4)} RD`, clause: 'MPMS-11.2.4-2007 5.1.1.3' }
}
