/**
 * Fp: scaled compressibility factor:
 *   Fp = exp[−1.9947 + 0.00013427 t* + (793920 + 2326 t*) / ρ*²]
 * @param rhoStar ρ*, density at 60 °F of IPTS-68 [kg/m³]
 * @param tStar temperature on IPTS-68 [°F]
 * @returns Fp [1e-5/psi]
 * @source MPMS-11.1-2004 11.1.6.1
 * @checked mpms11.1-2004/11.1.6.1/ex1 and following
 */
export function compressibility(rhoStar: number, tStar: number): number {
  return Math.exp(-1.9947 + 0.00013427 * tStar + (793920 + 2326 * tStar) / (rhoStar * rhoStar))
}

/**
 * CPL: correction for the effect of pressure on the liquid, base 0 psig:
 *   CPL = 1 / (1 − 10⁻⁵ Fp P)
 * @param Fp scaled compressibility factor [1e-5/psi]
 * @param P gauge pressure, 0 … 1500; above the equilibrium vapour pressure where that is above the atmosphere [psi]
 * @source MPMS-11.1-2004 11.1.6.1
 * @checked mpms11.1-2004/11.1.6.1/ex2 and following
 */
export function cpl(Fp: number, P: number): number {
  return 1 / (1 - 1e-5 * Fp * P)
}

/**
 * The pressure with which CPL is computed: a negative gauge pressure is set to 0.
 * @param P gauge pressure [psi]
 * @source MPMS-11.1-2004 11.1.6.1
 * @checked mpms11.1-2004/11.1.6.1/ex3
 */
export function notNegative(P: number): number {
  return P < 0 ? 0 : P
}
