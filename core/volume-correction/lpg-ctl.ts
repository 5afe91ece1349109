import { neighbours, REFERENCE_FLUIDS, type Neighbours, type ReferenceFluid } from './lpg-fluids.ts'

/** The most passes of the search for a relative density; from memory of the standard. @source MPMS-11.2.4-2007 5.1.2.3 */
export const MOST_PASSES_23E = 10
/** How near RD60 × CTL must come to the observed relative density; from memory of the standard. @source MPMS-11.2.4-2007 5.1.2.3 */
export const NEAR_ENOUGH_23E = 1e-8

/** How the search for a relative density at 60 °F ended. */
export type Search23E =
  | { readonly end: 'found'; readonly RD60: number; readonly passes: number }
  | { readonly end: 'below-range' | 'above-range' | 'not-converged'; readonly passes: number }

/**
 * Critical temperature of a liquid, between those of its reference fluids:
 *   Tc = Tc1 + δ (Tc2 − Tc1)
 * @param RD60 relative density 60/60 °F, 0.325022 … 0.688039
 * @returns Tc [K]
 * @source MPMS-11.2.4-2007 5.1.1.3
 */
export function criticalTemperature(RD60: number): number {
  return between(neighbours(RD60))
}

function between({ fluid1, fluid2, delta }: Neighbours): number {
  return fluid1.Tc + delta * (fluid2.Tc - fluid1.Tc)
}

/** A temperature in kelvin; 60 °F is 519.67/1.8 K. @source MPMS-11.2.4-2007 5.1.1.3 */
function kelvin(t: number): number {
  return (t + 459.67) / 1.8
}

/** ρs = ρc {1 + [k1 τ^0.35 + k3 τ² + k4 τ³] / [1 + k2 τ^0.65]}, τ = 1 − T/Tc [kmol/m³]. @source MPMS-11.2.4-2007 5.1.1.3 */
function saturationDensity(fluid: ReferenceFluid, tau: number): number {
  const { rhoc, k1, k2, k3, k4 } = fluid
  return rhoc * (1 + (k1 * tau ** 0.35 + k3 * tau ** 2 + k4 * tau ** 3) / (1 + k2 * tau ** 0.65))
}

/**
 * CTL of a light hydrocarbon from 60 °F, as in Table 24E. Liquid and pressure are those of saturation at both temperatures:
 *   τ = 1 − T/Tc, the same for both reference fluids;  h2 = Zc1 ρc1 / (Zc2 ρc2)
 *   X(T) = ρs1(τ) / {1 + δ [ρs1(τ) / (h2 ρs2(τ)) − 1]};  CTL = X(T) / X(60 °F)
 * There is none above the critical temperature: NaN.
 * @param RD60 relative density 60/60 °F, 0.325022 … 0.688039
 * @param t temperature, −50.8 … 199.4 and not above the critical temperature [°F]
 * @source MPMS-11.2.4-2007 5.1.1.3
 * @checked osha1910.110/H-29/0.510/40
 */
export function lightCtl(RD60: number, t: number): number {
  const pair = neighbours(RD60)
  return scaledDensity(pair, kelvin(t)) / scaledDensity(pair, kelvin(60))
}

function scaledDensity(pair: Neighbours, T: number): number {
  const { fluid1, fluid2, delta } = pair
  const tau = 1 - T / between(pair)
  const h2 = (fluid1.Zc * fluid1.rhoc) / (fluid2.Zc * fluid2.rhoc)
  const rho1 = saturationDensity(fluid1, tau)
  const rho2 = saturationDensity(fluid2, tau)
  return rho1 / (1 + delta * (rho1 / (h2 * rho2) - 1))
}

/**
 * Relative density at 60 °F that belongs to a relative density observed at t and at saturation, as in Table 23E: the bounded
 * search for RD60 × CTL(RD60, t) = RDobs. The bounds are two neighbouring reference fluids; within them the chord is
 * followed, and an end that stays twice counts for less, so that both close in on the root.
 * @param RDobs observed density over 999.016 kg/m³
 * @param t temperature of the observation, −50.8 … 199.4 [°F]
 * @source MPMS-11.2.4-2007 5.1.2.3
 */
export function searchRelativeDensity(RDobs: number, t: number): Search23E {
  const [first, ...rest] = knots(t)
  if (first === undefined) return { end: 'below-range', passes: 0 }
  let low = { RD: first, miss: first * lightCtl(first, t) - RDobs }
  if (low.miss > NEAR_ENOUGH_23E) return { end: 'below-range', passes: 0 }
  for (const RD of rest) {
    const high = { RD, miss: RD * lightCtl(RD, t) - RDobs }
    if (high.miss >= 0) return narrow(low, high, RDobs, t)
    low = high
  }
  return low.miss >= -NEAR_ENOUGH_23E ? { end: 'found', RD60: low.RD, passes: 0 } : { end: 'above-range', passes: 0 }
}

/** The reference fluids that are liquid at a temperature; before them the relative density whose critical temperature it is. */
function knots(t: number): readonly number[] {
  const T = kelvin(t)
  const liquid = REFERENCE_FLUIDS.filter((fluid) => fluid.Tc > T).map((fluid) => fluid.RD60)
  const gas = REFERENCE_FLUIDS.filter((fluid) => fluid.Tc <= T).at(-1)
  const lightest = REFERENCE_FLUIDS.find((fluid) => fluid.Tc > T)
  if (gas === undefined || lightest === undefined) return liquid
  const critical = gas.RD60 + ((T - gas.Tc) / (lightest.Tc - gas.Tc)) * (lightest.RD60 - gas.RD60)
  // a hair above it, so that τ is not negative by a rounding of the last digit
  return [critical + 1e-12, ...liquid]
}

interface Bound { readonly RD: number; readonly miss: number }

function narrow(from: Bound, to: Bound, RDobs: number, t: number): Search23E {
  let low = from
  let high = to
  let moved: 'low' | 'high' | null = null
  for (let passes = 1; passes <= MOST_PASSES_23E; passes += 1) {
    const RD: number = low.RD + ((high.RD - low.RD) * -low.miss) / (high.miss - low.miss)
    const miss = RD * lightCtl(RD, t) - RDobs
    if (Math.abs(miss) < NEAR_ENOUGH_23E) return { end: 'found', RD60: RD, passes }
    if (miss < 0) {
      if (moved === 'low') high = { RD: high.RD, miss: high.miss * weight(miss, low.miss) }
      low = { RD, miss }
      moved = 'low'
    } else {
      if (moved === 'high') low = { RD: low.RD, miss: low.miss * weight(miss, high.miss) }
      high = { RD, miss }
      moved = 'high'
    }
  }
  return { end: 'not-converged', passes: MOST_PASSES_23E }
}

/** What an end that stays keeps of its miss (Anderson and Björck), so that the next chord falls beyond the root. */
function weight(miss: number, before: number): number {
  const kept = 1 - miss / before
  return kept > 0 ? kept : 0.5
}
