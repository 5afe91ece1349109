import { polynomial } from './polynomial.ts'

/** Patterson–Morris coefficients of D, D², … after the zero that stands for no constant. @source MPMS-11.4.1 */
const PATTERSON_MORRIS = [0, 7.0134e-8, 7.926504e-6, -7.575677e-8, 7.314894e-10, -3.596458e-12] as const

/** a0 … a5 of Wagenbreth and Blanke, from memory. @source MPMS-11.2.3 */
const WAGENBRETH_BLANKE = [999.8395639, 0.06798299989, -0.009106025564, 1.005272999e-4, -1.126713526e-6, 6.591795606e-9] as const

/**
 * Density of air-free water at one atmosphere [kg/m³]:
 *   ρ = 999.97358 {1 − [A D + B D² + C D³ + E D⁴ + F D⁵]}, D = t − 3.9818
 * @param t temperature, 0 to 40 °C [°C, ITS-90]
 * @source MPMS-11.4.1 Patterson and Morris
 * @checked const/water60-2004
 */
export function waterDensity(t: number): number {
  return 999.97358 * (1 - polynomial(PATTERSON_MORRIS, t - 3.9818))
}

/**
 * Density of water as work to the tables of 1980 takes it [kg/m³]:
 *   ρ = a0 + a1 t + a2 t² + a3 t³ + a4 t⁴ + a5 t⁵
 * @param t temperature, 0 to 40 °C [°C, IPTS-68]
 * @source MPMS-11.2.3 Wagenbreth and Blanke
 * @checked const/water60-1980
 */
export function waterDensityOf1980(t: number): number {
  return polynomial(WAGENBRETH_BLANKE, t)
}
