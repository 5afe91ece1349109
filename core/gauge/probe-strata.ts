import { accepted, andThen, type Outcome } from '../refusal/index.ts'
import { volumeAtLevel, type CapacityTable } from '../tank/index.ts'
import { cubicMetresPer, Decimal } from '../units/index.ts'
import type { CoveredProbe } from './probe-level.ts'
import type { Bulging, ProbeReading } from './probe-reading.ts'

/** A layer of the liquid between two heights above datum [m], with its density [kg/m³] and temperature [°C]. */
export interface Layer {
  readonly from: number
  readonly to: number
  readonly density: number
  readonly temperature: number
  readonly water: boolean
}

/** A layer with what it holds: volume by the capacity table, what the bulging shell adds, and mass of both [m³, kg]. */
export interface Stratum extends Layer { readonly volume: number; readonly bulge: number; readonly mass: number }

/** Volume below a height, in cubic metres. */
export type VolumeBelow = (height: number) => Outcome<number>

/**
 * Cuts the liquid into layers at the covered modules. The lowest reaches down to datum and the uppermost up to the surface,
 * each with the density of the span it continues, so that six modules give four layers and twelve give ten.
 * @param covered spans from the bottom up, and the level
 * @source MPMS-16.2 strata
 */
export function layersOf({ spans, lowest, uppermost, level }: CoveredProbe): readonly Layer[] {
  return spans.map(({ lower, upper, density }) => ({
    from: lower === lowest ? 0 : lower.h, to: upper === uppermost.upper ? level : upper.h, density, temperature: (lower.t + upper.t) / 2, water: false,
  }))
}

/**
 * Volume and mass of each layer, from the bottom up; the lowest also has what the table gives below datum. Where the shell
 * bulges, its area grows with the head p that the table does not allow for:
 *   V = V(to) − V(from);  bulge = β p̄ V;  m = ρ (V + bulge)
 * with p̄ the mean head of the layer, exact where the area does not change within it.
 * @param layers from the bottom up
 * @param volumeBelow volume below a height [m³]
 * @param reading free fall and the bulging of the shell
 * @source MPMS-16.2 mass by strata
 */
export function strataOf(layers: readonly Layer[], volumeBelow: VolumeBelow, { g, bulging }: Pick<ProbeReading, 'g' | 'bulging'>): Outcome<readonly Stratum[]> {
  const strata: Stratum[] = []
  let below = 0
  for (const [i, layer] of layers.entries()) {
    const volume = volumeBelow(layer.to)
    if (!volume.ok) return volume
    const own = volume.value - below
    const bulge = bulging === undefined ? 0 : bulging.coefficient * meanHead(layers.slice(i), bulging, g) * own
    strata.push({ ...layer, volume: own, bulge, mass: layer.density * (own + bulge) })
    below = volume.value
  }
  return accepted(strata)
}

/** Mean head at the first of some layers under all above it, less that of the liquid for which the table was made [Pa]. */
function meanHead(layers: readonly Layer[], { tableDensity }: Bulging, g: number): number {
  return layers.reduce((head, { from, to, density }, i) => head + (density - tableDensity) * g * (to - from) * (i === 0 ? 0.5 : 1), 0)
}

/**
 * Volumes below heights by a capacity table, in cubic metres; a height is looked up once.
 * Refuses `level-outside-table`.
 * @param table as its certificate states it
 * @param path where the heights come from
 * @source MPMS-12.1.1 total observed volume
 */
export function volumesBy(table: CapacityTable, path: string): VolumeBelow {
  const known = new Map<number, Outcome<number>>()
  const perUnit = cubicMetresPer(table.volumeUnit)
  return (height) => {
    const before = known.get(height)
    if (before !== undefined) return before
    const read = andThen(volumeAtLevel(table, new Decimal(height).times(1000), path), ({ volume }) => accepted(volume.times(perUnit).toNumber()))
    known.set(height, read)
    return read
  }
}

/**
 * Mean over strata, each weighted by its volume: Σ x V / Σ V.
 * @param strata at least one
 * @param of what is averaged
 * @source MPMS-7 average by volume
 */
export function averageByVolume(strata: readonly Stratum[], of: (stratum: Stratum) => number): number {
  const volume = strata.reduce((sum, stratum) => sum + stratum.volume, 0)
  return strata.reduce((sum, stratum) => sum + of(stratum) * stratum.volume, 0) / volume
}
