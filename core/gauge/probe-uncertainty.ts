import type { ProbeLevel } from './probe-level.ts'
import type { ProbeReading } from './probe-reading.ts'
import type { Stratum } from './probe-strata.ts'

/**
 * Standard uncertainty of the level from that of one pressure, all pressures independent [m]. With a = h − L taken
 * from the uppermost covered module k and its span H to the module below:
 *   ∂L/∂pk = (1 + (L − hk)/H) / (ρ g),  ∂L/∂pk−1 = −(L − hk)/(H ρ g),  ∂L/∂ptop = −1/(ρ g)
 * @param found covered modules and level
 * @param reading uncertainty of a pressure, free fall
 * @source GUM 5.1.2
 */
export function levelUncertainty(found: ProbeLevel, reading: Pick<ProbeReading, 'uP' | 'g'>): number {
  const upper = found.wetted[found.wetted.length - 1]
  const lower = found.wetted[found.wetted.length - 2]
  const rho = found.densities[found.densities.length - 1]
  if (upper === undefined || lower === undefined || rho === undefined) return Number.POSITIVE_INFINITY
  const r = (found.level - upper.h) / (upper.h - lower.h)
  return (reading.uP / (rho * reading.g)) * Math.sqrt((1 + r) ** 2 + r ** 2 + 1)
}

/**
 * Standard uncertainty of the entrained-water share from that of the mean density over the span of the product's
 * modules: u(ρ) = √2 u(p) / (g H), divided by ρw − ρdry.
 * @param found covered modules
 * @param product strata of product
 * @param reading uncertainty of a pressure, free fall, dry density
 * @param rhoW density of water [kg/m³]
 * @source GUM 5.1.2
 */
export function shareUncertainty(found: ProbeLevel, product: readonly Stratum[], reading: ProbeReading, rhoW: number): number {
  const bottom = product[0]?.from ?? 0
  const heights = found.wetted.map((module) => module.h).filter((h) => h >= bottom)
  const span = Math.max(...heights) - Math.min(...heights)
  const uRho = (Math.SQRT2 * reading.uP) / (reading.g * span)
  return uRho / (rhoW - (reading.dryDensity ?? 0))
}
