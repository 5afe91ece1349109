import type { ProbeModule, ProbeReading } from './probe-reading.ts'

/** Offset of an emerged module from the pressure that the vapour has at its height [Pa]. */
export interface ZeroCheck { readonly module: string; readonly offset: number; readonly within: boolean }

/** Which modules are covered, the density between neighbours, and the level. */
export interface ProbeLevel {
  /** Covered modules, lowest first. */
  readonly wetted: readonly ProbeModule[]
  /** Density between covered neighbours [kg/m³], lowest first; one fewer than the covered modules. */
  readonly densities: readonly number[]
  /** Level above datum [m]. */
  readonly level: number
  readonly zeroChecks: readonly ZeroCheck[]
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
 * @param top the module in the vapour
 * @param rho density of the liquid above the module [kg/m³]
 * @param reading free fall and vapour density
 * @source MPMS-16.2 level from head pressure
 */
export function levelAbove(module: ProbeModule, top: ProbeModule, rho: number, reading: Pick<ProbeReading, 'g' | 'rhoV'>): number {
  return ((module.p - top.p) / reading.g + rho * module.h - reading.rhoV * top.h) / (rho - reading.rhoV)
}

/**
 * Finds the covered modules and the level. A module whose pressure is within the zero limit of the vapour's is
 * emerged; so is one above the level that the modules below it give, whose excess is then a zero error.
 * @param reading the probe in SI; the highest module stands in the vapour
 * @returns undefined when fewer than two modules are covered, so that no density can be had
 * @source MPMS-16.2 zero checks of emerged sensors
 */
export function findLevel(reading: ProbeReading): ProbeLevel | undefined {
  const { modules, g } = reading
  const top = modules[modules.length - 1]
  if (top === undefined) return undefined
  let covered = modules.length - 1
  while (covered > 0 && isEmerged(reading, covered - 1, top)) covered -= 1
  if (covered < 2) return undefined
  const wetted = modules.slice(0, covered)
  const densities = wetted.slice(1).map((upper, i) => stratumDensity(wetted[i] as ProbeModule, upper, g))
  const upper = wetted[covered - 1] as ProbeModule
  const level = levelAbove(upper, top, densities[densities.length - 1] as number, reading)
  const zeroChecks = modules.slice(covered, -1).map((module) => {
    const offset = overVapour(reading, module, top)
    return { module: module.name, offset, within: Math.abs(offset) <= reading.zeroLimit }
  })
  return { wetted, densities, level, zeroChecks }
}

/** Pressure of a module above the vapour's at its height [Pa]. */
function overVapour(reading: ProbeReading, module: ProbeModule, top: ProbeModule): number {
  return module.p - (top.p + reading.rhoV * reading.g * (top.h - module.h))
}

function isEmerged(reading: ProbeReading, i: number, top: ProbeModule): boolean {
  const module = reading.modules[i] as ProbeModule
  if (overVapour(reading, module, top) <= reading.zeroLimit) return true
  const [lower, below] = [reading.modules[i - 2], reading.modules[i - 1]]
  if (lower === undefined || below === undefined) return false
  const rho = stratumDensity(lower, below, reading.g)
  if (rho <= reading.rhoV) return false
  const tolerance = (6 * reading.uP) / (rho * reading.g)
  return levelAbove(below, top, rho, reading) < module.h - tolerance
}
