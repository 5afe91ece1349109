import { BANDS } from './bands.ts'
import type { Group } from './commodity.ts'
import { compressibility, cpl, notNegative } from './cpl.ts'
import { ctl, expansionFactor, shiftedDensity } from './ctl.ts'
import { onIpts68 } from './temperature-scale.ts'

/** Groups whose expansion follows from their density. */
export type KernelGroup = Exclude<Group, 'special'>

/**
 * The zones of a group as one run of numbers, from its heaviest zone down: lower bound, K0, K1, K2 of each.
 * @param group A crude, B refined, D lubricating
 * @source MPMS-11.1-2004 11.1.6.1
 */
export function zonesOf(group: KernelGroup): Float64Array {
  return new Float64Array(BANDS.filter((band) => band.commodity === group).flatMap(({ from, K0, K1, K2 }) => [from, K0, K1, K2]))
}

/**
 * CTL, CPL and CTPL from 60 °F of many points, written into room that is there already, so that a million of them allocate
 * nothing: the same functions in the same order as `liquidAt60` and `factorsAt`, and the same result to the last bit.
 *   points: ρ60, t, P, one after the other;  out: CTL, CPL, CTL × CPL of each at the same place
 * No range is checked here.
 * @param zones of the group, as {@link zonesOf} gives them
 * @param points density at 60 °F and 0 psig within the group's range [kg/m³], temperature −58 … 302 [°F], gauge pressure up to
 *   1500, negative taken as 0 [psi]
 * @param out where the factors are written, as long as `points`
 * @source MPMS-11.1-2004 11.1.6.1
 * @checked mpms11.1-2004/11.1.6.1/ex1 and following
 */
export function factorsInto(zones: Float64Array, points: Float64Array, out: Float64Array): void {
  for (let from = 0; from < points.length; from += BLOCK) {
    const to = from + BLOCK < points.length ? from + BLOCK : points.length
    temperatures(points, out, from, to)
    densities(zones, points, out, from, to)
    pressureFactors(points, out, from, to)
    temperatureFactors(out, from, to)
  }
}

/**
 * Numbers in a block of 128 points. One formula goes over a block before the next: around a call of `exp` everything that is
 * under way has to be put aside, and in a loop of one formula that is little. Within a block `out` holds what is under way.
 */
const BLOCK = 3 * 128

/** t* to the third place. */
function temperatures(points: Float64Array, out: Float64Array, from: number, to: number): void {
  for (let i = from; i < to; i += 3) out[i + 2] = onIpts68(at(points, i + 1))
}

/** ρ* to the first place, α60 to the second. */
function densities(zones: Float64Array, points: Float64Array, out: Float64Array, from: number, to: number): void {
  const lightest = zones.length - 4
  for (let i = from; i < to; i += 3) {
    const rho60 = at(points, i)
    let zone = 0
    while (zone < lightest && rho60 < at(zones, zone)) zone += 4
    // never leaves this function, so that it is not allocated
    const band = { K0: at(zones, zone + 1), K1: at(zones, zone + 2), K2: at(zones, zone + 3) }
    const rhoStar = shiftedDensity(band, rho60)
    out[i] = rhoStar
    out[i + 1] = expansionFactor(band, rhoStar)
  }
}

/** CPL to the first place, for ρ* there and t* at the third. */
function pressureFactors(points: Float64Array, out: Float64Array, from: number, to: number): void {
  for (let i = from; i < to; i += 3) out[i] = cpl(compressibility(at(out, i), at(out, i + 2)), notNegative(at(points, i + 2)))
}

/** CTL, CPL and CTPL, for CPL at the first place, α60 at the second and t* at the third. */
function temperatureFactors(out: Float64Array, from: number, to: number): void {
  for (let i = from; i < to; i += 3) {
    const CTL = ctl(at(out, i + 1), at(out, i + 2))
    const CPL = at(out, i)
    out[i] = CTL
    out[i + 1] = CPL
    out[i + 2] = CTL * CPL
  }
}

/** A number of a run; NaN beyond its end. */
function at(run: Float64Array, i: number): number {
  return run[i] ?? NaN
}
