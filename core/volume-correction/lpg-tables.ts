import { discriminate, type Discriminated, type Rounded } from '../rounding/index.ts'
import { degC, degF, WATER_AT_60F, type Temperature, type TemperatureUnit } from '../units/index.ts'
import { BASE_DEGF } from './base-temperature.ts'
import type { BaseTemperature } from './commodity.ts'
import { lightCtl, searchRelativeDensity, type Search23E } from './lpg-ctl.ts'

/** A pair of tables: from observed to base density, and from base density to CTL; with what they are entered by. */
interface Tables {
  readonly toBase: '23E' | '53E' | '59E'
  readonly toCtl: '24E' | '54E' | '60E'
  readonly density: Discriminated & `density ${string}`
  readonly densityUnit: 'RD' | 'kg/m3'
  readonly temperatureUnit: TemperatureUnit
}

/** The tables of each base temperature. Their increments are from memory. @source MPMS-11.2.4-2007 3 */
export const TABLES: { readonly [B in BaseTemperature]: Tables } = {
  '60 degF': { toBase: '23E', toCtl: '24E', density: 'density RD', densityUnit: 'RD', temperatureUnit: 'degF' },
  '15 degC': { toBase: '53E', toCtl: '54E', density: 'density kg/m3', densityUnit: 'kg/m3', temperatureUnit: 'degC' },
  '20 degC': { toBase: '59E', toCtl: '60E', density: 'density kg/m3', densityUnit: 'kg/m3', temperatureUnit: 'degC' },
}

/**
 * A density as the tables are entered with it: relative density to 0.0001, or density to 0.1 kg/m³.
 * @param base base temperature, which names the tables
 * @param kgPerM3 density [kg/m³]
 * @source MPMS-11.2.4-2007 3
 */
export function densityEntry(base: BaseTemperature, kgPerM3: number): Rounded {
  const { density, densityUnit } = TABLES[base]
  return discriminate(density, densityUnit === 'RD' ? kgPerM3 / WATER_AT_60F : kgPerM3)
}

/**
 * A temperature as the tables are entered with it: to 0.1 °F, or to 0.05 °C.
 * @param base base temperature, which names the tables
 * @param temperature as read
 * @source MPMS-11.2.4-2007 3
 */
export function temperatureEntry(base: BaseTemperature, temperature: Temperature): { readonly rounded: Rounded; readonly t: number } {
  const { temperatureUnit: unit } = TABLES[base]
  const rounded = discriminate(`temperature ${unit}`, unit === temperature.unit ? temperature.value : unit === 'degF' ? degF(temperature) : degC(temperature))
  return { rounded, t: degF({ text: rounded.text, value: rounded.value, unit }) }
}

/**
 * RD60 of a density at a temperature and at saturation, the density entered as the tables are.
 * @param base base temperature, which names the tables
 * @param kgPerM3 density there [kg/m³]
 * @param t temperature [°F]
 * @source MPMS-11.2.4-2007 5.1.2.3
 */
export function entered(base: BaseTemperature, kgPerM3: number, t: number): Search23E {
  const entry = densityEntry(base, kgPerM3).value.toNumber()
  return searchRelativeDensity(base === '60 degF' ? entry : entry / WATER_AT_60F, t)
}

/**
 * RD60 with which Tables 24E, 54E and 60E compute, from the base density rounded as they are entered.
 * @param base base temperature, which names the tables
 * @param baseDensity density at the base temperature [kg/m³]
 * @source MPMS-11.2.4-2007 5.2.1.3
 */
export function relativeDensityOf(base: BaseTemperature, baseDensity: number): Search23E {
  if (base === '60 degF') return { end: 'found', RD60: densityEntry(base, baseDensity).value.toNumber(), passes: 0 }
  return entered(base, baseDensity, BASE_DEGF[base])
}

/**
 * CTL from a base temperature:
 *   CTL = CTL(60 °F → t) / CTL(60 °F → base)
 * @param base 60 °F, 15 °C or 20 °C
 * @param RD60 relative density 60/60 °F, 0.3500 … 0.6880
 * @param t temperature, −50.8 … 199.4 and below the critical one [°F]
 * @source MPMS-11.2.4-2007 5.2.1.3
 * @checked mpms11.2.4/scope/15C/low
 */
export function lightCtlFrom(base: BaseTemperature, RD60: number, t: number): number {
  return base === '60 degF' ? lightCtl(RD60, t) : lightCtl(RD60, t) / lightCtl(RD60, BASE_DEGF[base])
}
