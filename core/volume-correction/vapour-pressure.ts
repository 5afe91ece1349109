/** One range of the correlation: ln P = A + B/(t + 443), with A and B from the relative density. */
interface Range { readonly from: number; readonly to: number; readonly A0: number; readonly A1: number; readonly A2: number; readonly B0: number; readonly B1: number; readonly B2: number }

/**
 * Coefficients by relative density 60/60 °F; the lower bound belongs to the range. From public transcriptions of the standard,
 * which was not read itself.
 * @source MPMS-11.2.5 Table 1
 */
const RANGES: readonly Range[] = [
  { from: 0.35, to: 0.45, A0: 17.5297, A1: -24.604, A2: 24.373, B0: -6567.6, B1: 19322, B2: -24693.3 },
  { from: 0.45, to: 0.49, A0: 7.9907, A1: 7.562, A2: 0, B0: 1895.5, B1: -10596.9, B2: 0 },
  { from: 0.49, to: 0.51, A0: -6.4747, A1: 37.083, A2: 0, B0: 12038, B1: -31296.5, B2: 0 },
  { from: 0.51, to: 0.56, A0: 11.5454, A1: 1.749, A2: 0, B0: 1378.8, B1: -10396.1, B2: 0 },
  { from: 0.56, to: 0.585, A0: 6.4827, A1: 10.79, A2: 0, B0: 3721.5, B1: -14579.5, B2: 0 },
  { from: 0.585, to: 0.625, A0: 6.5412, A1: 10.69, A2: 0, B0: 6514.5, B1: -19353.9, B2: 0 },
  { from: 0.625, to: 0.676, A0: 20.8537, A1: -12.21, A2: 0, B0: -6765.6, B1: 1894.3, B2: 0 },
]

/** Relative densities for which the correlation is made. @source MPMS-11.2.5 */
export const VAPOUR_PRESSURE_RD = { from: 0.35, to: 0.676 } as const

/**
 * Temperatures for which the correlation is made [°F]: −50 to 140; below a relative density of 0.425 only up to
 * 695.51 RD − 155.51, near the critical temperature.
 * @param RD60 relative density 60/60 °F, 0.35 … 0.676
 * @source MPMS-11.2.5
 */
export function vapourPressureTemperatures(RD60: number): { readonly from: number; readonly to: number } {
  return { from: -50, to: RD60 < 0.425 ? 695.51 * RD60 - 155.51 : 140 }
}

/**
 * Equilibrium vapour pressure of a commercial natural gas liquid (propane, butanes, natural gasoline), absolute:
 *   P = exp[A + B / (t + 443)],  A = A0 + A1 RD + A2 RD²,  B = B0 + B1 RD + B2 RD²
 * A commercial product holds lighter parts than the pure substance of its density: propane comes out about 3 % above pure propane.
 * @param RD60 relative density 60/60 °F, 0.35 … 0.676
 * @param t temperature, as {@link vapourPressureTemperatures} [°F]
 * @returns absolute vapour pressure [psi]
 * @source MPMS-11.2.5
 * @checked mpms12.2/ex5/vapour-pressure
 */
export function vapourPressure(RD60: number, t: number): number {
  const range = RANGES.find((one) => RD60 < one.to) ?? RANGES.at(-1)
  if (range === undefined) throw new Error('no range')
  const { A0, A1, A2, B0, B1, B2 } = range
  const A = A0 + A1 * RD60 + A2 * RD60 ** 2
  const B = B0 + B1 * RD60 + B2 * RD60 ** 2
  return Math.exp(A + B / (t + 443))
}
