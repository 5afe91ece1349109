import { accepted, allOf, andThen, refused, type Outcome } from '../refusal/index.ts'
import { display } from '../rounding/index.ts'
import { waterDensity } from '../volume-correction/index.ts'
import { coveredProbe, type CoveredProbe } from './probe-level.ts'
import { STRATUM_DENSITY } from './probe-limits.ts'
import type { ProbeReading } from './probe-reading.ts'
import { averageByVolume, layersOf, strataOf, type Stratum, type VolumeBelow } from './probe-strata.ts'
import { findWater } from './probe-water.ts'

/** Everything that follows from a probe's pressures, unrounded, in m, m³, kg, kg/m³ and °C. */
export interface ProbeFigures {
  readonly covered: CoveredProbe
  readonly level: number
  /** Top of the free water; undefined when none was found. */
  readonly waterLevel: number | undefined
  readonly strata: readonly Stratum[]
  /** By level and table, as a level gauge would have it. */
  readonly volume: number
  /** What the bulging shell holds besides. */
  readonly bulge: number
  readonly massFromTable: number
  readonly massFromHead: number
  /** Head pressure that the liquid above the lowest module makes [Pa]. */
  readonly head: number
  /** Mean area between lowest module and surface, and the volume below that module. */
  readonly area: number
  readonly heel: number
  readonly averageDensity: number
  readonly averageTemperature: number
  /** Of the product alone; undefined when all is water. */
  readonly product: { readonly density: number; readonly temperature: number } | undefined
  /** Share of water held in the product; undefined without the dry density. */
  readonly entrained: number | undefined
}

/**
 * Figures of a probe of which so many modules are covered.
 *   Mtable = Σ ρ V;  Mhead = (p1 − psurface)/g × A + ρ1 Vheel;  A = (V(L) − V(h1)) / (L − h1)
 * The mass of a floating roof that the table does not deduct is taken off both. Entrained water is (ρ − ρdry) / (ρw − ρdry).
 * Refuses `out-of-range`: fewer than two covered modules, the highest covered, a density that no liquid has; and
 * `level-outside-table`.
 * @param reading the probe in SI
 * @param count how many modules are covered
 * @param volumeBelow volume below a height [m³]
 * @param at path of a field
 * @source MPMS-16.2 mass from head pressure
 */
export function figuresOf(reading: ProbeReading, count: number, volumeBelow: VolumeBelow, at: (field: string) => string): Outcome<ProbeFigures> {
  return andThen(checkCovered(reading, count, at), (covered) => andThen(findWater(layersOf(covered), covered, reading, at), ({ layers, top }) =>
    andThen(allOf<{ strata: readonly Stratum[]; heel: number }>({ strata: strataOf(layers, volumeBelow, reading), heel: volumeBelow(covered.lowest.h) }), ({ strata, heel }) =>
      accepted(figuresFrom(reading, covered, strata, heel, top)))))
}

/**
 * Spans and level of a probe, where they can be true.
 * Refuses `out-of-range`: fewer than two covered modules, the highest covered, a density that no liquid has.
 * @param reading the probe in SI
 * @param count how many modules are covered
 * @param at path of a field
 * @source MPMS-16.2 sensor positions
 */
export function checkCovered(reading: ProbeReading, count: number, at: (field: string) => string): Outcome<CoveredProbe> {
  const clause = 'MPMS-16.2 sensor positions'
  const covered = coveredProbe(reading, count)
  if (covered === undefined) return refused({ code: 'out-of-range', path: at('modules'), value: 'fewer than two covered modules', limit: 'at least two covered, for a density between them', clause })
  const impossible = covered.spans.findIndex(({ density }) => density < STRATUM_DENSITY.from || density > STRATUM_DENSITY.to)
  const wrong = covered.spans[impossible]
  if (wrong !== undefined) return refused({ code: 'out-of-range', path: at(`modules.${impossible}`), value: `a density of ${display(wrong.density, 1)} kg/m3 above ${wrong.lower.name}`, limit: `${STRATUM_DENSITY.from} to ${STRATUM_DENSITY.to} kg/m3; check the modules on both sides`, clause })
  if (covered.level >= reading.vapour.h) return refused({ code: 'out-of-range', path: at('modules'), value: 'a level above the highest module', limit: `below ${reading.vapour.name}, which must stand in the vapour`, clause })
  return accepted(covered)
}

function figuresFrom(reading: ProbeReading, covered: CoveredProbe, strata: readonly Stratum[], heel: number, waterLevel: number | undefined): ProbeFigures {
  const [bottom] = strata
  if (bottom === undefined) throw new Error('a covered probe has at least one stratum')
  const { vapour, g, rhoV, roofMass = 0, dryDensity } = reading
  const { lowest, level } = covered
  const sum = (of: (stratum: Stratum) => number): number => strata.reduce((total, stratum) => total + of(stratum), 0)
  const [volume, bulge, liquid] = [sum((s) => s.volume), sum((s) => s.bulge), sum((s) => s.mass)]
  const head = lowest.p - vapour.p - rhoV * g * (vapour.h - level)
  const area = (volume + bulge - heel) / (level - lowest.h)
  // what stands below the lowest module has the density of the lowest stratum, both ways
  const below = bottom.density * heel
  const product = strata.filter((stratum) => !stratum.water)
  const of = product.length === 0 ? undefined : { density: averageByVolume(product, (s) => s.density), temperature: averageByVolume(product, (s) => s.temperature) }
  return {
    covered, level, waterLevel, strata, volume, bulge, head, area, heel, massFromTable: liquid - roofMass, massFromHead: (head / g) * area + below - roofMass,
    averageDensity: liquid / (volume + bulge), averageTemperature: averageByVolume(strata, (s) => s.temperature), product: of,
    entrained: of === undefined || dryDensity === undefined ? undefined : (of.density - dryDensity) / (waterDensity(of.temperature) - dryDensity),
  }
}
