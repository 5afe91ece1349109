/** Patterson–Morris coefficients of D, D², … @source MPMS-11.4.1 */
const PATTERSON_MORRIS = [7.0134e-8, 7.926504e-6, -7.575677e-8, 7.314894e-10, -3.596458e-12] as const

/**
 * Density of air-free water at one atmosphere [kg/m³]:
 *   ρ = 999.97358 {1 − [A D + B D² + C D³ + E D⁴ + F D⁵]}, D = t − 3.9818
 * @param t temperature, 0 to 40 °C [°C, ITS-90]
 * @source MPMS-11.4.1 Patterson and Morris
 * @checked const/water60-2004
 */
export function waterDensity(t: number): number {
  const D = t - 3.9818
  const [A, B, C, E, F] = PATTERSON_MORRIS
  return 999.97358 * (1 - (A * D + B * D ** 2 + C * D ** 3 + E * D ** 4 + F * D ** 5))
}
