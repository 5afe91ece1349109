import { discriminate } from '../rounding/index.ts'
import type { Group } from './commodity.ts'

/** The two systems of the tables: those to 60 °F with α per °F, and those to 15 °C with α per °C. */
export type System = '60 degF' | '15 degC'

/** One density zone: its range of base density [kg/m³], lower bound within, and α = K0/ρ² + K1/ρ + K2. */
export interface Zone1980 {
  readonly group: Group
  readonly subgroup: 'crude' | 'fuel-oil' | 'jet' | 'transition' | 'gasoline' | 'lubricating' | 'special'
  readonly from: number
  readonly to: number
  readonly K0: number
  readonly K1: number
  readonly K2: number
  /** How much faster than α itself the factor changes with density, for the step of the search. */
  readonly Da: number
}

/** Density of water at 60 °F of the tables of 1980 [kg/m³]. @source ASTM-D1250-80 */
export const WATER_1980 = 999.012

/**
 * Zones and coefficients. At 60 °F the borders of the products are those of API gravity, 37.05, 47.95 and 51.95 between the
 * printed 37.0|37.1, 47.9|48.0 and 51.9|52.0, with water of 999.012 kg/m³; at 15 °C the printed lower ends of the zones.
 * Outer limits of crude and lubricating oils: from memory.
 * @source ASTM-D1250-80 Tables 6, 24, 54
 */
export const ZONES_1980: { readonly [S in System]: readonly Zone1980[] } = {
  '60 degF': [
    { group: 'crude', subgroup: 'crude', from: 610.4, to: 1075, K0: 341.0957, K1: 0, K2: 0, Da: 2 },
    { group: 'refined', subgroup: 'fuel-oil', from: 838.6841, to: 1075, K0: 103.872, K1: 0.2701, K2: 0, Da: 1.3 },
    { group: 'refined', subgroup: 'jet', from: 787.7414, to: 838.6841, K0: 330.301, K1: 0, K2: 0, Da: 2 },
    { group: 'refined', subgroup: 'transition', from: 770.5653, to: 787.7414, K0: 1489.067, K1: 0, K2: -0.0018684, Da: 8.5 },
    { group: 'refined', subgroup: 'gasoline', from: 652.9, to: 770.5653, K0: 192.4571, K1: 0.2438, K2: 0, Da: 1.5 },
    { group: 'lube', subgroup: 'lubricating', from: 800.9, to: 1163.5, K0: 0, K1: 0.34878, K2: 0, Da: 1 },
    { group: 'special', subgroup: 'special', from: 610.4, to: 1163.5, K0: 0, K1: 0, K2: 0, Da: 0 },
  ],
  '15 degC': [
    { group: 'crude', subgroup: 'crude', from: 610.5, to: 1075, K0: 613.9723, K1: 0, K2: 0, Da: 2 },
    { group: 'refined', subgroup: 'fuel-oil', from: 839, to: 1075, K0: 186.9696, K1: 0.4862, K2: 0, Da: 1.3 },
    { group: 'refined', subgroup: 'jet', from: 787.5, to: 839, K0: 594.5418, K1: 0, K2: 0, Da: 2 },
    { group: 'refined', subgroup: 'transition', from: 770.5, to: 787.5, K0: 2680.3206, K1: 0, K2: -0.00336312, Da: 8.5 },
    { group: 'refined', subgroup: 'gasoline', from: 653, to: 770.5, K0: 346.4228, K1: 0.4388, K2: 0, Da: 1.5 },
    { group: 'lube', subgroup: 'lubricating', from: 800, to: 1164, K0: 0, K1: 0.6278, K2: 0, Da: 1 },
    { group: 'special', subgroup: 'special', from: 610.5, to: 1164, K0: 0, K1: 0, K2: 0, Da: 0 },
  ],
}

/** Base temperature of a system, in its own degrees. */
export const BASE_1980: { readonly [S in System]: number } = { '60 degF': 60, '15 degC': 15 }

/** The density range of a group in a system [kg/m³], both ends included. @source ASTM-D1250-80 */
export function densityRange1980(group: Group, system: System): { readonly from: number; readonly to: number } {
  const zones = ZONES_1980[system].filter((zone) => zone.group === group)
  return { from: Math.min(...zones.map((zone) => zone.from)), to: Math.max(...zones.map((zone) => zone.to)) }
}

/** The zone of a group in which a base density lies; the lightest below the range. @source ASTM-D1250-80 */
export function zoneAt1980(group: Group, system: System, rho: number): Zone1980 {
  const zones = ZONES_1980[system].filter((zone) => zone.group === group)
  const zone = zones.find((one) => rho >= one.from) ?? zones.at(-1)
  if (zone === undefined) throw new Error(`no zone for ${group}`)
  return zone
}

/**
 * α at the base temperature, not rounded: α = K0/ρ² + K1/ρ + K2.
 * @param zone coefficients
 * @param rho base density [kg/m³]
 * @returns α [1/°F or 1/°C, by the system]
 * @source ASTM-D1250-80 Volume X
 */
export function expansion1980(zone: Zone1980, rho: number): number {
  return zone.K0 / (rho * rho) + zone.K1 / rho + zone.K2
}

/** α rounded to 7 decimals, as it is before it is used. @source ASTM-D1250-80 Volume X @checked d1250-80/54B/710/-36.0 */
export function roundedExpansion(system: System, alpha: number): number {
  return discriminate(system === '60 degF' ? 'alpha60 /degF' : 'alpha15 /degC', alpha).value.toNumber()
}

/**
 * VCF from the base temperature of the system: VCF = exp[−α Δt (1 + 0.8 α Δt)], Δt = t − Tb.
 * @param alpha expansion factor [1/°]
 * @param dt Δt, in the degrees of the system
 * @source ASTM-D1250-80 Volume X
 * @checked d1250-80/54B/710/-39.3 and following
 */
export function vcf1980(alpha: number, dt: number): number {
  return Math.exp(-alpha * dt * (1 + 0.8 * alpha * dt))
}

/** How the search for a base density ended. */
export type Search1980 =
  | { readonly end: 'found'; readonly rho: number; readonly passes: number }
  | { readonly end: 'below-range' | 'above-range' | 'not-converged'; readonly passes: number }

/** Most passes of the search; the range of the tables needs no more than half of them. */
export const MOST_PASSES_1980 = 30
const NEAR_ENOUGH = 1e-7

/**
 * Base density that belongs to an observed one (Tables 5, 23, 53): ρ such that ρ VCF(ρ) = ρobs.
 * Within each zone by Newton's step with α not rounded, which is smooth; then ρ = ρobs / VCF once more with α rounded to 7 and
 * VCF to 6 decimals, as the tables were made. Between two zones α steps a little: an observed density in the gap
 * that this leaves belongs to the border.
 * @param group commodity group
 * @param given α at the base temperature of a special application; null where the coefficients give it
 * @param system 60 °F or 15 °C
 * @param rhoObs observed density, as corrected for the hydrometer [kg/m³]
 * @param dt t − Tb, in the degrees of the system
 * @source ASTM-D1250-80 Volume X
 * @checked d1250-80/5B/40.5/83
 */
export function searchBase1980(group: Group, given: number | null, system: System, rhoObs: number, dt: number): Search1980 {
  const { from, to } = densityRange1980(group, system)
  let rho = Math.min(Math.max(rhoObs, from), to)
  for (let passes = 1; passes <= MOST_PASSES_1980; passes += 1) {
    const zone = zoneAt1980(group, system, rho)
    const alpha = given ?? expansion1980(zone, rho)
    const VCF = vcf1980(alpha, dt)
    const E = rhoObs / VCF - rho
    if (Math.abs(E) < NEAR_ENOUGH) return found(group, given, system, rhoObs, dt, rho, passes)
    const step = E / (1 + zone.Da * alpha * dt * (1 + 1.6 * alpha * dt))
    const next = Math.min(Math.max(rho + step, from), to)
    if (next === rho) return { end: next === from ? 'below-range' : 'above-range', passes }
    rho = next
  }
  return { end: 'not-converged', passes: MOST_PASSES_1980 }
}

function found(group: Group, given: number | null, system: System, rhoObs: number, dt: number, rho: number, passes: number): Search1980 {
  const alpha = roundedExpansion(system, given ?? expansion1980(zoneAt1980(group, system, rho), rho))
  return { end: 'found', passes, rho: rhoObs / discriminate('VCF 6 decimals', vcf1980(alpha, dt)).value.toNumber() }
}
