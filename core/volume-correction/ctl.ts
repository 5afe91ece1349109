import type { Band } from './bands.ts'

/** The coefficients of a zone. */
export type Coefficients = Pick<Band, 'K0' | 'K1' | 'K2'>

/** Shift of the base temperature from 60 °F on IPTS-68 to 60 °F on ITS-90 [°F]. @source MPMS-11.1-2004 11.1.6.1 */
export const DELTA60 = 0.01374979547

/** 60 °F of ITS-90 on IPTS-68 [°F], from which Δt is counted. @source MPMS-11.1-2004 11.1.6.1 */
export const BASE60 = 60.0068749

/**
 * ρ*: density at 60 °F of IPTS-68, from density at 60 °F of ITS-90, by the coefficients of a group:
 *   A = (δ60/2) [(K0/ρ60 + K1)/ρ60 + K2]
 *   B = (2 K0 + K1 ρ60) / [K0 + (K1 + K2 ρ60) ρ60]
 *   ρ* = ρ60 {1 + [exp(A (1 + 0.8 A)) − 1] / [1 + A (1 + 1.6 A) B]}
 * @param band the zone's coefficients
 * @param rho60 density at 60 °F, within the zone [kg/m³]
 * @returns ρ* [kg/m³]
 * @source MPMS-11.1-2004 11.1.6.1
 * @checked mpms11.1-2004/11.1.6.1/ex1 and following
 */
export function shiftedDensity(band: Coefficients, rho60: number): number {
  const { K0, K1, K2 } = band
  const A = (DELTA60 / 2) * ((K0 / rho60 + K1) / rho60 + K2)
  const B = (2 * K0 + K1 * rho60) / (K0 + (K1 + K2 * rho60) * rho60)
  return rho60 * (1 + (Math.exp(A * (1 + 0.8 * A)) - 1) / (1 + A * (1 + 1.6 * A) * B))
}

/**
 * ρ* of a special application, whose expansion factor is given:
 *   ρ* = ρ60 exp[0.5 α60 δ60 (1 + 0.4 α60 δ60)]
 * @param alpha60 thermal expansion factor at 60 °F, 230e-6 … 930e-6 [1/°F]
 * @param rho60 density at 60 °F [kg/m³]
 * @returns ρ* [kg/m³]
 * @source MPMS-11.1-2004 11.1.6.1
 * @checked mpms11.1-2004/11.1.6.2/ex7
 */
export function shiftedDensityByAlpha(alpha60: number, rho60: number): number {
  return rho60 * Math.exp(0.5 * alpha60 * DELTA60 * (1 + 0.4 * alpha60 * DELTA60))
}

/**
 * α60: thermal expansion factor at 60 °F from the coefficients of a group:
 *   α60 = (K0/ρ* + K1)/ρ* + K2
 * @param band the zone's coefficients
 * @param rhoStar ρ* [kg/m³]
 * @returns α60 [1/°F]
 * @source MPMS-11.1-2004 11.1.6.1
 * @checked mpms11.1-2004/11.1.6.1/ex1 and following
 */
export function expansionFactor(band: Coefficients, rhoStar: number): number {
  return (band.K0 / rhoStar + band.K1) / rhoStar + band.K2
}

/**
 * CTL: correction for the effect of temperature on the liquid, base 60 °F:
 *   CTL = exp{ −α60 Δt [1 + 0.8 α60 (Δt + δ60)] },  Δt = t* − 60.0068749
 * @param alpha60 thermal expansion factor at 60 °F, 230e-6 … 930e-6 [1/°F]
 * @param tStar temperature on IPTS-68 [°F]
 * @source MPMS-11.1-2004 11.1.6.1
 * @checked mpms11.1-2004/11.1.6.1/ex1 and following
 */
export function ctl(alpha60: number, tStar: number): number {
  const dt = tStar - BASE60
  return Math.exp(-alpha60 * dt * (1 + 0.8 * alpha60 * (dt + DELTA60)))
}
