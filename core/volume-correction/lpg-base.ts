import { accepted, andThen, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { psig, WATER_AT_60F } from '../units/index.ts'
import { BASE_DEGF } from './base-temperature.ts'
import type { BaseTemperature, DensityInput } from './commodity.ts'
import { definedAt60, readDensity, type DensityReading } from './density-reading.ts'
import { lightCtl, MOST_PASSES_23E, NEAR_ENOUGH_23E, searchRelativeDensity, type Search23E } from './lpg-ctl.ts'
import { LIGHT_DENSITIES, lightDensityOutside, readLightConditions } from './lpg-limits.ts'
import { noEffectPublished, pressureEffect } from './lpg-pressure.ts'
import { densityEntry, entered, relativeDensityOf, TABLES, temperatureEntry } from './lpg-tables.ts'

/** A light hydrocarbon whose base density is known, and how it was found. */
export interface LightLiquid {
  readonly reading: DensityReading
  readonly baseTemperature: BaseTemperature
  /** Density at the base temperature and at saturation, unrounded; as stated, where it was stated there [kg/m³]. */
  readonly baseDensity: number
  /** Density at 60 °F and at saturation, unrounded [kg/m³]. */
  readonly density60: number
  /** Relative density with which the tables compute: of the base density as they are entered with it. */
  readonly RD60: number
  readonly passes: number
}

/** How often the effect of an observed pressure is put in again; each time it is about a hundredth of the time before. */
const MOST_ROUNDS = 20

/**
 * The light hydrocarbon that was written, with its base density by Table 23E, 53E or 59E. °API gravity and relative density
 * that were stated are of 60 °F. A density observed above the vapour pressure is first taken to it by the compressibility:
 *   ρs = ρobs / CPL(RD60), RD60 from ρs, again until it stays
 * Refuses what cannot be read, all at once; then `density-outside-group`, `density-not-converged`, `out-of-range` for a
 * pressure whose effect is not published.
 * @param density as written
 * @param base base temperature of the product
 * @param path where the density stood
 * @source MPMS-11.2.4-2007 5.1.2.3
 * @checked mpms11.2.4/scope/15C/low
 */
export function findLightLiquid(density: DensityInput, base: BaseTemperature, path: string): Outcome<LightLiquid> {
  const rules = { baseTemperature: base, readConditions: readLightConditions, clause: 'MPMS-11.2.4-2007 5.1.2.3' } as const
  return andThen(readDensity(density, path, rules), (reading) => {
    const found = reading.observed === null ? stated(reading, base, path) : observed(reading, base, path)
    return andThen(found, ({ RD60: exact, passes }) => {
      const density60 = exact * WATER_AT_60F
      const statedThere = reading.observed === null && (base === '60 degF' || !definedAt60(reading.density.unit))
      const baseDensity = statedThere ? reading.used : density60 * (base === '60 degF' ? 1 : lightCtl(exact, BASE_DEGF[base]))
      return andThen(outcomeOf(relativeDensityOf(base, baseDensity), base, reading, path), ({ RD60 }) => accepted({ reading, baseTemperature: base, baseDensity, density60, RD60, passes }))
    })
  })
}

type Found = Extract<Search23E, { end: 'found' }>

function outcomeOf(search: Search23E, base: BaseTemperature, reading: DensityReading, path: string): Outcome<Found> {
  if (search.end === 'found') return accepted(search)
  const where = `${path}.value`
  if (search.end !== 'not-converged') return refused(lightDensityOutside(base, reading.density.text, where))
  return refused(notConverged(reading, where, `${MOST_PASSES_23E} passes to ${NEAR_ENOUGH_23E} relative density`))
}

function notConverged(reading: DensityReading, where: string, limit: string): Finding {
  return { code: 'density-not-converged', path: where, value: reading.density.text, limit, clause: 'MPMS-11.2.4-2007 5.1.2.3' }
}

/** A density at base conditions: limits are held against it as it was written, unrounded. */
function stated(reading: DensityReading, base: BaseTemperature, path: string): Outcome<Found> {
  const at60 = base === '60 degF' || definedAt60(reading.density.unit)
  const [low, high] = LIGHT_DENSITIES[at60 ? '60 degF' : base]
  const held = at60 ? reading.used / WATER_AT_60F : reading.used
  // a whole step of RD is not lost by the way through kg/m³ and back
  const slack = at60 ? 1e-12 : 0
  if (held < Number(low) - slack || held > Number(high) + slack) return refused(lightDensityOutside(base, reading.density.text, `${path}.value`))
  return at60 ? accepted({ end: 'found', RD60: held, passes: 0 }) : outcomeOf(entered(base, held, BASE_DEGF[base]), base, reading, path)
}

/** An observed density, at saturation or under a pressure above it. */
function observed(reading: DensityReading, base: BaseTemperature, path: string): Outcome<Found> {
  const conditions = reading.observed
  if (conditions === null) throw new Error('not an observed density')
  const { t } = temperatureEntry(base, conditions.temperature)
  const within = (found: Found): Outcome<Found> => {
    const [low, high] = LIGHT_DENSITIES['60 degF']
    const printed = densityEntry('60 degF', found.RD60 * WATER_AT_60F).value
    return printed.gte(low) && printed.lte(high) ? accepted(found) : refused(lightDensityOutside(base, reading.density.text, `${path}.value`))
  }
  const { pressure } = conditions
  if (pressure === null) return andThen(outcomeOf(entered(base, reading.used, t), base, reading, path), within)
  const entry = densityEntry(base, reading.used).value.toNumber() / (TABLES[base].densityUnit === 'RD' ? 1 : WATER_AT_60F)
  const P = psig(pressure)
  let cpl = 1
  let before = 0
  let passes = 0
  for (let round = 1; round <= MOST_ROUNDS; round += 1) {
    const search = outcomeOf(searchRelativeDensity(entry / cpl, t), base, reading, path)
    if (!search.ok) return search
    const { RD60 } = search.value
    passes += search.value.passes
    const found = pressureEffect(RD60, t, P)
    if (!found.ok) return refused(noEffectPublished(pressure, `${path}.pressure`, found.why))
    if (Math.abs(RD60 - before) < NEAR_ENOUGH_23E) return within({ end: 'found', RD60, passes })
    before = RD60
    cpl = found.effect.cpl
  }
  return refused(notConverged(reading, `${path}.value`, `${MOST_ROUNDS} rounds of the effect of pressure to ${NEAR_ENOUGH_23E} relative density`))
}
