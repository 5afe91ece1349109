import { GROSS_OFFSET, LEVEL_MARGIN } from './probe-limits.ts'
import type { ProbeModule } from './probe-modules.ts'
import type { ProbeReading } from './probe-reading.ts'

/** Two covered neighbours and the density of the liquid between them [kg/m³]. */
export interface Span { readonly lower: ProbeModule; readonly upper: ProbeModule; readonly density: number }

/** The covered part of a probe: spans from the bottom up, and the level that follows. */
export interface CoveredProbe {
  readonly spans: readonly Span[]
  readonly lowest: ProbeModule
  /** The span that the level is found from. */
  readonly uppermost: Span
  /** Level above datum [m]. */
  readonly level: number
  /** Modules below the vapour module that are not covered, lowest first. */
  readonly emerged: readonly ProbeModule[]
}

/**
 * ρ = (p1 − p2) / (g H): density of the liquid between two neighbours, H apart [kg/m³].
 * @param lower module below, Pa and m
 * @param upper module above, Pa and m
 * @param g free fall [m/s²]
 * @source MPMS-16.2 density from two sensors
 */
export function stratumDensity(lower: ProbeModule, upper: ProbeModule, g: number): number {
  return (lower.p - upper.p) / (g * (upper.h - lower.h))
}

/**
 * Level above a covered module: its pressure above the vapour's is carried by liquid of density ρ, and the vapour
 * between surface and top module adds ρv g (htop − L):
 *   L = [ (p − ptop)/g + ρ h − ρv htop ] / (ρ − ρv)
 * @param module the covered module
 * @param rho density of the liquid above the module [kg/m³]
 * @param reading free fall, vapour density and the module in the vapour
 * @source MPMS-16.2 level from head pressure
 */
export function levelAbove(module: ProbeModule, rho: number, { vapour, g, rhoV }: Pick<ProbeReading, 'g' | 'rhoV' | 'vapour'>): number {
  return ((module.p - vapour.p) / g + rho * module.h - rhoV * vapour.h) / (rho - rhoV)
}

/**
 * Pressure of a module above that of the vapour at its height [Pa]: p − [ptop + ρv g (htop − h)].
 * @param module any module below the vapour module
 * @param reading free fall, vapour density and the module in the vapour
 * @source MPMS-16.2 zero checks of emerged sensors
 */
export function overVapour(module: ProbeModule, { vapour, g, rhoV }: Pick<ProbeReading, 'g' | 'rhoV' | 'vapour'>): number {
  return module.p - (vapour.p + rhoV * g * (vapour.h - module.h))
}

/**
 * How many modules are covered, from the bottom up. A module is emerged when its pressure is within the zero limit of the
 * vapour's; or when it is little over it (by less than ten limits) and above the level that the span below it gives: then
 * the excess is a zero error. A module that is just covered by a lighter liquid cannot be told from such a one.
 * @param reading the probe in SI
 * @source MPMS-16.2 zero checks of emerged sensors
 */
export function countCovered(reading: ProbeReading): number {
  const spans: Span[] = []
  let below: ProbeModule | undefined
  let count = 0
  for (const module of reading.modules) {
    if (isEmerged(module, spans.at(-1), reading)) return count
    if (below !== undefined) spans.push({ lower: below, upper: module, density: stratumDensity(below, module, reading.g) })
    below = module
    count += 1
  }
  return count
}

function isEmerged(module: ProbeModule, below: Span | undefined, reading: ProbeReading): boolean {
  const over = overVapour(module, reading)
  if (over <= reading.zeroLimit) return true
  if (below === undefined || over > GROSS_OFFSET * reading.zeroLimit || below.density <= reading.rhoV) return false
  return levelAbove(below.upper, below.density, reading) < module.h - (LEVEL_MARGIN * reading.uP) / (below.density * reading.g)
}

/**
 * Spans and level of the lowest modules; undefined when fewer than two are covered, so that no density can be had.
 * @param reading the probe in SI
 * @param count how many modules are covered
 * @source MPMS-16.2 density from two sensors
 */
export function coveredProbe(reading: ProbeReading, count: number): CoveredProbe | undefined {
  const covered = reading.modules.slice(0, count)
  const [lowest, ...above] = covered
  const spans: Span[] = []
  let below = lowest
  for (const upper of above) {
    if (below !== undefined) spans.push({ lower: below, upper, density: stratumDensity(below, upper, reading.g) })
    below = upper
  }
  const uppermost = spans.at(-1)
  if (lowest === undefined || uppermost === undefined) return undefined
  return { spans, lowest, uppermost, level: levelAbove(uppermost.upper, uppermost.density, reading), emerged: reading.modules.slice(count) }
}
