/** Slope and constant of the rule for biodiesel, both from memory. @source CFR40-80.1426 (f)(8)(ii) */
export const BIODIESEL_RULE = { perDegF: -0.00045767, constant: 1.02746025 } as const

/** Change of the density of fatty acid methyl esters with temperature [kg/m³ per °C], from memory. @source EN-14214 Annex B */
export const METHYL_ESTER_SLOPE = 0.723

/**
 * VCF of neat biodiesel to 60 °F: V60 = V × VCF,
 *   VCF = −0.00045767 T + 1.02746025
 * @param t temperature, 32 … 140 [°F]; the rule states no range
 * @source CFR40-80.1426 (f)(8)(ii)
 */
export function biodieselVcf(t: number): number {
  return BIODIESEL_RULE.perDegF * t + BIODIESEL_RULE.constant
}

/**
 * Density of fatty acid methyl esters at 15 °C from a density at another temperature:
 *   ρ15 = ρt + 0.723 (t − 15)
 * @param density ρt [kg/m³]
 * @param t temperature of it, 15 … 60 [°C]
 * @source EN-14214 Annex B
 */
export function methylEsterDensityAt15(density: number, t: number): number {
  return density + METHYL_ESTER_SLOPE * (t - 15)
}

/**
 * CTL of fatty acid methyl esters from 15 °C: the density at t as a share of that at 15 °C,
 *   CTL = 1 − 0.723 (t − 15) / ρ15
 * @param density15 ρ15, 860 … 900 [kg/m³]
 * @param t temperature, 15 … 60 [°C]
 * @source EN-14214 Annex B
 */
export function methylEsterCtl(density15: number, t: number): number {
  return 1 - (METHYL_ESTER_SLOPE * (t - 15)) / density15
}
