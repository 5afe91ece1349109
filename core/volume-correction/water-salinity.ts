import { polynomial } from './polynomial.ts'

/** Coefficients of the equation of state of seawater at one atmosphere: water; S; S^1.5; S². @source UNESCO-44 one-atmosphere equation of state */
const FRESH = [999.842594, 6.793952e-2, -9.09529e-3, 1.001685e-4, -1.120083e-6, 6.536332e-9] as const
const SALT = [8.24493e-1, -4.0899e-3, 7.6438e-5, -8.2467e-7, 5.3875e-9] as const
const SALT_AND_HALF = [-5.72466e-3, 1.0227e-4, -1.6546e-6] as const
const SALT_SQUARED = 4.8314e-4

/**
 * Density of seawater at one atmosphere [kg/m³]:
 *   ρ = A(t) + B(t) S + C(t) S√S + 4.8314×10⁻⁴ S²
 * The coefficients were written from memory and found the same in nine public transcriptions.
 * @param S practical salinity, 0 … 42 [PSS-78]
 * @param t temperature, −2 … 40 [°C, IPTS-68]
 * @source UNESCO-44 one-atmosphere equation of state
 * @checked unesco-44/35/5
 */
export function seawaterDensity(S: number, t: number): number {
  return polynomial(FRESH, t) + polynomial(SALT, t) * S + polynomial(SALT_AND_HALF, t) * S * Math.sqrt(S) + SALT_SQUARED * S * S
}
