import { bandAt, densityRange } from './bands.ts'
import type { Group } from './commodity.ts'
import { compressibility, cpl, notNegative } from './cpl.ts'
import { ctl, expansionFactor, shiftedDensity, shiftedDensityByAlpha } from './ctl.ts'
import { onIpts68 } from './temperature-scale.ts'

/** The liquid as the formulas see it: its group and, for a special application, its expansion factor [1/°F]. */
export interface Liquid {
  readonly commodity: Group
  /** α60 as given; null where the group's coefficients give it. */
  readonly alpha60: number | null
}

/** How the search for a base density ended. */
export type Search =
  | { readonly end: 'found'; readonly rho60: number; readonly passes: number }
  | { readonly end: 'below-range' | 'above-range' | 'not-converged'; readonly passes: number }

/** The most passes that the standard allows. @source MPMS-11.1-2004 11.1.6.2 */
export const MOST_PASSES = 15
/** How near ρ60 × CTPL must come to the observed density [kg/m³]. @source MPMS-11.1-2004 11.1.6.2 */
export const NEAR_ENOUGH = 1e-6

/**
 * ρ60: density at 60 °F and 0 psig that belongs to a density observed at t and P, by iteration:
 *   start ρ60 = ρobs, held within the range of the group; each pass CTL, CPL at ρ60, done when |ρobs − ρ60 CTL CPL| < 10⁻⁶;
 *   else ρ60 ← ρ60 + E / (1 + DT + DP), held within the range, where
 *   E = ρobs/(CTL CPL) − ρ60
 *   DT = Da α60 (t − 60) [1 + 1.6 α60 (t − 60)], 0 for a special application
 *   DP = −2 CPL P 10⁻⁵ Fp (793920 + 2326 t) / ρ60²
 * A density that is pressed against an end of the range is refused: no ρ60 within it was found. (Where a hot, light special
 * application under more than 1400 psi is compressed by more than its density would have it, the search can end so, or
 * without an end, although there is one.)
 * @param liquid group, and α60 of a special application
 * @param rhoObs observed density, as corrected for the hydrometer [kg/m³]
 * @param t temperature of the observation, −58 … 302 [°F]
 * @param P gauge pressure of the observation, up to 1500; negative is taken as 0 [psi]
 * @source MPMS-11.1-2004 11.1.6.2
 * @checked mpms11.1-2004/11.1.6.2/ex1 and following
 */
export function searchBaseDensity(liquid: Liquid, rhoObs: number, t: number, P: number): Search {
  const { from, to } = densityRange(liquid.commodity)
  const tStar = onIpts68(t)
  const p = notNegative(P)
  let rho60 = within(rhoObs, from, to)
  for (let passes = 1; passes <= MOST_PASSES; passes += 1) {
    // the zone is chosen again on every pass: near its edges the printed digits differ if it is not
    const band = bandAt(liquid.commodity, rho60)
    const given = liquid.alpha60
    const rhoStar = given === null ? shiftedDensity(band, rho60) : shiftedDensityByAlpha(given, rho60)
    const alpha60 = given ?? expansionFactor(band, rhoStar)
    const Fp = compressibility(rhoStar, tStar)
    const CTL = ctl(alpha60, tStar)
    const CPL = cpl(Fp, p)
    if (Math.abs(rhoObs - rho60 * CTL * CPL) < NEAR_ENOUGH) return { end: 'found', rho60, passes }
    const next = within(rho60 + step(rhoObs / (CTL * CPL) - rho60, band.Da, alpha60, Fp, CPL, rho60, t, p), from, to)
    if (next === rho60 && (next === from || next === to)) return { end: next === from ? 'below-range' : 'above-range', passes }
    rho60 = next
  }
  return { end: 'not-converged', passes: MOST_PASSES }
}

/** E / (1 + DT + DP), with t as observed, not on IPTS-68. */
function step(E: number, Da: number, alpha60: number, Fp: number, CPL: number, rho60: number, t: number, P: number): number {
  const DT = Da * alpha60 * (t - 60) * (1 + 1.6 * alpha60 * (t - 60))
  const DP = (-2 * CPL * P * 1e-5 * Fp * (793920 + 2326 * t)) / (rho60 * rho60)
  return E / (1 + DT + DP)
}

function within(rho: number, from: number, to: number): number {
  return rho < from ? from : rho > to ? to : rho
}
