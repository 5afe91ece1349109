/** Where the compressibility of a light hydrocarbon is published. @source MPMS-11.2.2 title and 11.2.2.2 */
export const COMPRESSIBILITY_RANGE = {
  /** Relative density 60/60 °F. */
  RD60: { from: 0.35, to: 0.637 },
  /** Temperature [°F]. */
  t: { from: -50, to: 140 },
  /** Most pressure above the vapour pressure [psi]; from memory. */
  above: 2200,
} as const

/** Kelvin-like absolute temperature of the standard [°R]: with 459.67 its own example does not come out. @source MPMS-11.2.2 11.2.2.8.3M */
const RANKINE = 459.7

/**
 * Coefficients of A and B, each of one term in the order in which they are written below. From a public transcription and
 * from memory, which agree; the standard was not read itself.
 * @source MPMS-11.2.2 11.2.2.6M
 */
const A = { T2: -2.1465891e-6, T2G2: 1.577439e-5, T2G4: -1.0502139e-5, T3G6: 2.8324481e-7, one: -0.95495939, T3G2: 7.2900662e-8, T3G4: -2.7769343e-7, TG2: 0.03645838, TG: -0.05110158, T: 0.00795529, G: 9.1311491 } as const
const B = { T2: -6.0357667e-10, TG2: 2.2112678e-6, G: 0.00088384, G2: -0.00204016 } as const

/** The two constants of a liquid at a temperature, with which F = 1 / (A + B ΔP). */
export interface CompressibilityConstants {
  /** [psi] */
  readonly A: number
  readonly B: number
}

/**
 * A and B of a light hydrocarbon, T = t + 459.7, G its relative density:
 *   A = 10⁵ (a1 T² + a2 T² G² + a3 T² G⁴ + a4 T³ G⁶ + a5 + a6 T³ G² + a7 T³ G⁴ + a8 T G² + a9 T G + a10 T + a11 G)
 *   B = 10⁵ (b1 T² + b2 T G² + b3 G + b4 G²)
 * @param RD60 relative density 60/60 °F, 0.350 … 0.637
 * @param t temperature, −50 … 140 and not near the critical one ({@link nearCritical}) [°F]
 * @source MPMS-11.2.2 11.2.2.6M
 * @checked mpms11.2.2m/11.2.2.8.3m
 */
export function compressibilityConstants(RD60: number, t: number): CompressibilityConstants {
  const T = t + RANKINE
  const G = RD60
  return {
    A: 1e5 * (A.T2 * T ** 2 + A.T2G2 * T ** 2 * G ** 2 + A.T2G4 * T ** 2 * G ** 4 + A.T3G6 * T ** 3 * G ** 6 + A.one + A.T3G2 * T ** 3 * G ** 2 + A.T3G4 * T ** 3 * G ** 4 + A.TG2 * T * G ** 2 + A.TG * T * G + A.T * T + A.G * G),
    B: 1e5 * (B.T2 * T ** 2 + B.TG2 * T * G ** 2 + B.G * G + B.G2 * G ** 2),
  }
}

/**
 * F: compressibility factor of a light hydrocarbon, mean over the pressure above its vapour pressure:
 *   F = 1 / (A + B ΔP)
 * @param RD60 relative density 60/60 °F, 0.350 … 0.637
 * @param t temperature, −50 … 140 [°F]
 * @param above ΔP, pressure above the vapour pressure, 0 … 2200 [psi]
 * @returns F [1/psi]
 * @source MPMS-11.2.2 11.2.2.6M
 * @checked mpms12.2/ex5/cpl
 */
export function lightCompressibility(RD60: number, t: number, above: number): number {
  const constants = compressibilityConstants(RD60, t)
  return 1 / (constants.A + constants.B * above)
}

/**
 * CPL of a light hydrocarbon, from its vapour pressure:
 *   CPL = 1 / (1 − F ΔP)
 * @param F compressibility factor [1/psi]
 * @param above ΔP, pressure above the vapour pressure, 0 … 2200 [psi]
 * @source MPMS-11.2.2
 * @checked mpms12.2/ex5/cpl
 */
export function lightCpl(F: number, above: number): number {
  return 1 / (1 - F * above)
}

/**
 * Whether a temperature is too near the critical one for the correlation: T > 0.96 Tc,
 *   Tc = 621.418 − 822.686 G + 1737.86 G² [°R]
 * @param RD60 relative density 60/60 °F
 * @param t temperature [°F]
 * @source MPMS-11.2.2 11.2.2.8.1M
 */
export function nearCritical(RD60: number, t: number): boolean {
  return t + RANKINE > 0.96 * (621.418 - 822.686 * RD60 + 1737.86 * RD60 ** 2)
}
