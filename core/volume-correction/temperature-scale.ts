/** a1 … a8 of the difference between the two scales. @source MPMS-11.1-2004 11.1.5.3 @source ITS-90 */
const ITS90_TO_IPTS68 = { a1: -0.148759, a2: -0.267408, a3: 1.08076, a4: 1.269056, a5: -4.089591, a6: -1.871251, a7: 7.438081, a8: -3.536296 } as const

/**
 * A temperature of today's scale on the scale for which the expansion formulas were made:
 *   τ = t90 / 630;  Δt = Σ aᵢ τⁱ, i = 1 … 8;  t68 = t90 − Δt;  t* = 1.8 t68 + 32   (t90, t68 in °C)
 * @param t temperature on ITS-90, −58 … 302 [°F]
 * @returns t* on IPTS-68 [°F]
 * @source MPMS-11.1-2004 11.1.5.3
 * @checked mpms11.1-2004/11.1.6.1/ex1 and following
 */
export function onIpts68(t: number): number {
  const { a1, a2, a3, a4, a5, a6, a7, a8 } = ITS90_TO_IPTS68
  const t90 = (t - 32) / 1.8
  const tau = t90 / 630
  const dt = (a1 + (a2 + (a3 + (a4 + (a5 + (a6 + (a7 + a8 * tau) * tau) * tau) * tau) * tau) * tau) * tau) * tau
  return 1.8 * (t90 - dt) + 32
}
