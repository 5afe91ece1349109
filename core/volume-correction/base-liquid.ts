import { accepted, allOf, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import { degF, perDegF, psig, type Expansion } from '../units/index.ts'
import { searchBaseDensity, MOST_PASSES, NEAR_ENOUGH, type Liquid, type Search } from './base-density.ts'
import { BASE_DEGF } from './base-temperature.ts'
import { densityRange } from './bands.ts'
import type { BaseTemperature, DensityInput, Group } from './commodity.ts'
import { definedAt60, readDensity, type DensityReading } from './density-reading.ts'
import { liquidAt60, type BaseLiquid } from './factors.ts'
import { densityOutsideGroup, readConditions, readExpansion } from './limits.ts'

/** What a base density is found from, as it was written. */
export interface BaseLiquidInput {
  readonly commodity: Group
  readonly alpha?: string | undefined
  readonly density: DensityInput
  readonly baseTemperature: BaseTemperature
}

/** Where the parts of a {@link BaseLiquidInput} stood, for findings: the path of `density`, and that of `alpha`. */
export interface BaseLiquidPaths { readonly density: string; readonly alpha: string }

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
  const read = allOf({ expansion: readAlpha(input, paths.alpha), reading: readDensity(input.density, paths.density, { baseTemperature: input.baseTemperature, readConditions, clause: 'MPMS-11.1-2004 11.1.6.2' }) })
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
