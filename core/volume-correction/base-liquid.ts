import { accepted, allOf, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import { degF, kilogramsPerCubicMetre, parseDensity, perDegF, psig, type Density, type Expansion, type Pressure, type Temperature } from '../units/index.ts'
import { searchBaseDensity, MOST_PASSES, NEAR_ENOUGH, type Liquid, type Search } from './base-density.ts'
import { BASE_DEGF } from './base-temperature.ts'
import { densityRange } from './bands.ts'
import type { BaseTemperature, Commodity, DensityInput } from './commodity.ts'
import { definedAt60, liquidAt60, type BaseLiquid } from './factors.ts'
import { hydrometerCorrection } from './hydrometer.ts'
import { densityOutsideGroup, readExpansion, readPressure, readTemperature } from './limits.ts'

/** What a base density is found from, as it was written. */
export interface BaseLiquidInput {
  readonly commodity: Commodity
  readonly alpha?: string | undefined
  readonly density: DensityInput
  readonly baseTemperature: BaseTemperature
}

/** Where the parts of a {@link BaseLiquidInput} stood, for findings: the path of `density`, and that of `alpha`. */
export interface BaseLiquidPaths { readonly density: string; readonly alpha: string }

/** How a density was stated: at base conditions, or as observed at a temperature and pressure. */
export interface DensityReading {
  readonly density: Density
  /** Temperature, pressure and hydrometer correction of an observed density; null for a density at base conditions. */
  readonly observed: { readonly temperature: Temperature; readonly pressure: Pressure | null; readonly hydrometer: { readonly factor: number; readonly graduatedAt: BaseTemperature } | null } | null
  /** Density as used: as written, times the hydrometer correction [kg/m³]. */
  readonly used: number
}

/** A liquid with its base density, and how that was found. */
export interface FoundLiquid { readonly liquid: BaseLiquid; readonly reading: DensityReading; readonly expansion: Expansion | null; readonly passes: number }

/**
 * The liquid that was written, with its base density.
 * A density without temperature is a base density: in kg/m³ or g/cm³ at the product's base temperature. °API gravity
 * and relative density are defined at 60 °F whatever the product's base temperature, so a base value in them is the
 * density at 60 °F, and a hydrometer in them is graduated at 60 °F; a hydrometer in kg/m³ or g/cm³ is graduated at the
 * product's base temperature. An observed value in any unit is the density at the temperature of the observation.
 * Refuses all of `unreadable-value`, `unit-not-accepted`, `out-of-range`, `missing-value`, `value-not-used` at once; then
 * `density-outside-group`, `density-not-converged`.
 * @param input commodity, density, base temperature, and alpha for a special application
 * @param paths where density and alpha stood
 * @source MPMS-11.1-2004 11.1.6.2
 * @source MPMS-11.1-2004 11.1.7.2
 * @checked mpms11.1-2004/11.1.7.2/ex1 and following
 */
export function findBaseLiquid(input: BaseLiquidInput, paths: BaseLiquidPaths): Outcome<FoundLiquid> {
  const read = allOf({ expansion: readAlpha(input, paths.alpha), reading: readingOf(input, paths.density) })
  return andThen(read, ({ expansion, reading }) => {
    const liquid: Liquid = { commodity: input.commodity, alpha60: expansion === null ? null : perDegF(expansion) }
    const search = density60(liquid, reading, input.baseTemperature)
    if (search.end !== 'found') return refused(notFound(search.end, input, reading, paths.density))
    return accepted({ liquid: liquidAt60(liquid, input.baseTemperature, search.rho60, reading.observed === null ? reading.density : null), reading, expansion, passes: search.passes })
  })
}

/**
 * Expansion factor of a commodity: special applications need it, the others may not have it (null).
 * Refuses `missing-value`, `value-not-used`, `unreadable-value`, `unit-not-accepted`, `out-of-range`.
 * @param input commodity and alpha as written
 * @param path where alpha stood
 * @source MPMS-11.1-2004 11.1.6.1
 */
export function readAlpha(input: Pick<BaseLiquidInput, 'commodity' | 'alpha'>, path: string): Outcome<Expansion | null> {
  if (input.commodity === 'special') {
    if (input.alpha !== undefined) return readExpansion(input.alpha, path)
    return refused({ code: 'missing-value', path, value: '', limit: 'a special application needs its thermal expansion factor at 60 °F, as 0.000510 /degF', clause: 'MPMS-11.1-2004 11.1.6.1' })
  }
  if (input.alpha === undefined) return accepted(null)
  return refused({ code: 'value-not-used', path, value: input.alpha, limit: `the expansion factor of ${input.commodity} follows from its density; leave it out, or choose the commodity special`, clause: 'MPMS-11.1-2004 11.1.6.1' })
}

function readingOf(input: BaseLiquidInput, path: string): Outcome<DensityReading> {
  const { value, temperature, pressure, hydrometer } = input.density
  const density = parseDensity(value, `${path}.value`)
  const parsedPressure: Outcome<Pressure | null> = pressure === undefined ? accepted(null) : readPressure(pressure, `${path}.pressure`)
  if (temperature === undefined) return andThen(allOf({ density, pressure: parsedPressure, atBase: onlyAtBase(input, path) }), (read) => accepted({ density: read.density, observed: null, used: kilogramsPerCubicMetre(read.density) }))
  return andThen(allOf({ density, temperature: readTemperature(temperature, `${path}.temperature`), pressure: parsedPressure }), (read) => {
    const graduatedAt = definedAt60(read.density.unit) ? '60 degF' : input.baseTemperature
    const correction = hydrometer === true ? { factor: hydrometerCorrection(graduatedAt, degF(read.temperature)), graduatedAt } : null
    const used = kilogramsPerCubicMetre(read.density) * (correction?.factor ?? 1)
    return accepted({ density: read.density, observed: { temperature: read.temperature, pressure: read.pressure, hydrometer: correction }, used })
  })
}

/** A density without temperature is at base conditions, where there is no pressure and no hydrometer. */
function onlyAtBase(input: BaseLiquidInput, path: string): Outcome<null> {
  const { pressure, hydrometer } = input.density
  if (hydrometer !== true && pressure === undefined) return accepted(null)
  return refused({
    code: 'missing-value', path: `${path}.temperature`, value: '',
    limit: 'an observed density needs the temperature at which it was observed; leave out pressure and hydrometer where the density is at base conditions',
    clause: 'MPMS-11.1-2004 11.1.6.2',
  })
}

/** Density at 60 °F of a reading: as it stands, or by the search from the base temperature or from what was observed. */
function density60(liquid: Liquid, reading: DensityReading, baseTemperature: BaseTemperature): Search {
  const { observed, used, density } = reading
  if (observed !== null) {
    return searchBaseDensity(liquid, used, degF(observed.temperature), observed.pressure === null ? 0 : psig(observed.pressure))
  }
  if (baseTemperature !== '60 degF' && !definedAt60(density.unit)) {
    return searchBaseDensity(liquid, used, BASE_DEGF[baseTemperature], 0)
  }
  const { from, to } = densityRange(liquid.commodity)
  if (used < from) return { end: 'below-range', passes: 0 }
  return used <= to ? { end: 'found', rho60: used, passes: 0 } : { end: 'above-range', passes: 0 }
}

function notFound(end: Exclude<Search['end'], 'found'>, input: BaseLiquidInput, reading: DensityReading, path: string): Finding {
  const where = `${path}.value`
  if (end !== 'not-converged') return densityOutsideGroup(input.commodity, input.density.value, reading.density.unit, where)
  return { code: 'density-not-converged', path: where, value: input.density.value, limit: `${MOST_PASSES} passes to ${NEAR_ENOUGH} kg/m3`, clause: 'MPMS-11.1-2004 11.1.6.2' }
}
