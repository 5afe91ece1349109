import { accepted, andThen, type Outcome } from '../refusal/index.ts'
import { volumeAtLevel, type CapacityTable } from '../tank/index.ts'
import { cubicMetresPer, Decimal } from '../units/index.ts'
import type { ProbeLevel } from './probe-level.ts'

/** A layer of the liquid: heights above datum [m], density [kg/m³], temperature [°C], volume [m³]. */
export interface Stratum {
  readonly from: number
  readonly to: number
  readonly density: number
  readonly temperature: number
  readonly volume: number
  readonly water: boolean
}

/**
 * Cuts the liquid into strata at the covered modules. The lowest reaches down to datum and the uppermost up to the
 * surface, each with the density of the span it continues. Free water is the run of strata from the bottom whose
 * density is above the threshold.
 * @param found covered modules, densities and level
 * @param table capacity table, for the volume of each stratum
 * @param waterThreshold density above which a bottom stratum is free water [kg/m³]; undefined: not looked for
 * @param path where the table stands, for findings
 * @source MPMS-16.2 strata
 */
export function strataOf(found: ProbeLevel, table: CapacityTable, waterThreshold: number | undefined, path: string): Outcome<readonly Stratum[]> {
  const { wetted, densities, level } = found
  const inner = wetted.slice(1, -1).map((module) => module.h)
  const edges = [0, ...inner, level]
  const tops = edges.slice(1)
  let below: Outcome<readonly number[]> = accepted([])
  for (const edge of edges) below = andThen(below, (volumes) => andThen(tableVolume(table, edge, path), (v) => accepted([...volumes, v])))
  return andThen(below, (volumes) => {
    let waterSoFar = true
    return accepted(tops.map((to, i): Stratum => {
      const density = densities[i] ?? 0
      waterSoFar = waterSoFar && waterThreshold !== undefined && density > waterThreshold
      const temperature = ((wetted[i]?.t ?? 0) + (wetted[i + 1]?.t ?? 0)) / 2
      return { from: edges[i] ?? 0, to, density, temperature, volume: (volumes[i + 1] ?? 0) - (volumes[i] ?? 0), water: waterSoFar }
    }))
  })
}

/** Volume below a height, in cubic metres. */
export function tableVolume(table: CapacityTable, height: number, path: string): Outcome<number> {
  return andThen(volumeAtLevel(table, new Decimal(height).times(1000), path), (read) => accepted(read.volume.times(cubicMetresPer(table.volumeUnit)).toNumber()))
}

/** Sum over strata of a share weighted by volume, over the volume: Σ x V / Σ V. */
export function averageByVolume(strata: readonly Stratum[], of: (stratum: Stratum) => number): number {
  const volume = strata.reduce((sum, stratum) => sum + stratum.volume, 0)
  return strata.reduce((sum, stratum) => sum + of(stratum) * stratum.volume, 0) / volume
}
