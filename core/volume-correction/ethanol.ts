/** Slope and constant of the rule for fuel ethanol; the slope was read, the constant is from memory. @source CFR40-80.1426 (f)(8)(i) */
export const FUEL_ETHANOL = { perDegF: -0.0006301, constant: 1.0378 } as const

/**
 * VCF of fuel ethanol, denatured or not, to 60 °F: V60 = V × VCF,
 *   VCF = −0.0006301 T + 1.0378
 * At 60 °F itself it gives 0.999994: it is 1 to five decimals only by rounding.
 * @param t temperature, 0 … 120 [°F]; the rule states no range
 * @source CFR40-80.1426 (f)(8)(i)
 */
export function fuelEthanolVcf(t: number): number {
  return FUEL_ETHANOL.perDegF * t + FUEL_ETHANOL.constant
}
