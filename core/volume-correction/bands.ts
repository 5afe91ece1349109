import type { Group } from './commodity.ts'

/** The density zones of the commodity groups, as worksheets and tickets name them. */
export type Subgroup = 'crude' | 'fuel-oil' | 'jet' | 'transition' | 'gasoline' | 'lubricating' | 'special'

/**
 * One density zone: its range of density at 60 °F [kg/m³] and its coefficients. The lower bound belongs to the zone;
 * the upper bound belongs to it only where no other zone of the group begins there.
 */
export interface Band {
  readonly commodity: Group
  readonly subgroup: Subgroup
  readonly from: number
  readonly to: number
  readonly K0: number
  readonly K1: number
  readonly K2: number
  /** Factor of the temperature term in the step of the iteration. */
  readonly Da: number
}

/**
 * Density ranges and coefficients of every commodity group; within a group, the heaviest zone first. The expansion
 * factor of a special application is given, so it has no coefficients and no temperature term in the iteration.
 * @source MPMS-11.1-2004 11.1.6.1
 */
export const BANDS = [
  { commodity: 'crude', subgroup: 'crude', from: 610.6, to: 1163.5, K0: 341.0957, K1: 0, K2: 0, Da: 2 },
  { commodity: 'refined', subgroup: 'fuel-oil', from: 838.3127, to: 1163.5, K0: 103.872, K1: 0.2701, K2: 0, Da: 1.3 },
  { commodity: 'refined', subgroup: 'jet', from: 787.5195, to: 838.3127, K0: 330.301, K1: 0, K2: 0, Da: 2 },
  { commodity: 'refined', subgroup: 'transition', from: 770.352, to: 787.5195, K0: 1489.067, K1: 0, K2: -0.0018684, Da: 8.5 },
  { commodity: 'refined', subgroup: 'gasoline', from: 610.6, to: 770.352, K0: 192.4571, K1: 0.2438, K2: 0, Da: 1.5 },
  { commodity: 'lube', subgroup: 'lubricating', from: 800.9, to: 1163.5, K0: 0, K1: 0.34878, K2: 0, Da: 1 },
  { commodity: 'special', subgroup: 'special', from: 610.6, to: 1163.5, K0: 0, K1: 0, K2: 0, Da: 0 },
] as const satisfies readonly Band[]

const OF_GROUP: { readonly [C in Group]: readonly Band[] } = {
  crude: BANDS.filter((band) => band.commodity === 'crude'),
  refined: BANDS.filter((band) => band.commodity === 'refined'),
  lube: BANDS.filter((band) => band.commodity === 'lube'),
  special: BANDS.filter((band) => band.commodity === 'special'),
}

/**
 * The zone of a commodity group in which a density lies; the lightest zone below the group's range.
 * @param commodity the group
 * @param rho60 density at 60 °F, within the group's range [kg/m³]
 * @source MPMS-11.1-2004 11.1.6.1
 */
export function bandAt(commodity: Group, rho60: number): Band {
  const bands = OF_GROUP[commodity]
  let band = bands[0]
  for (const lighter of bands) {
    band = lighter
    if (rho60 >= lighter.from) break
  }
  if (band === undefined) throw new Error(`no density zone for ${commodity}`)
  return band
}

/**
 * The density range of a commodity group at 60 °F [kg/m³], both ends included.
 * @param commodity the group
 * @source MPMS-11.1-2004 11.1.3
 */
export function densityRange(commodity: Group): { readonly from: number; readonly to: number } {
  return RANGES[commodity]
}

const RANGES = {
  crude: rangeOf(OF_GROUP.crude), refined: rangeOf(OF_GROUP.refined), lube: rangeOf(OF_GROUP.lube), special: rangeOf(OF_GROUP.special),
}

function rangeOf(bands: readonly Band[]): { readonly from: number; readonly to: number } {
  return { from: Math.min(...bands.map((band) => band.from)), to: Math.max(...bands.map((band) => band.to)) }
}
