import { polynomial } from './polynomial.ts'

/** A₁ … A₁₂: density at 20 °C against the mass fraction p. @source OIML-R22 general formula */
const A = [
  9.9820123e2, -1.929769495e2, 3.891238958e2, -1.668103923e3, 1.352215441e4, -8.829278388e4,
  3.062874042e5, -6.138381234e5, 7.470172998e5, -5.478461354e5, 2.234460334e5, -3.903285426e4,
] as const

/** B₁ … B₆: temperature terms of water, after the zero that stands for no constant. @source OIML-R22 general formula */
const B = [0, -2.0618513e-1, -5.2682542e-3, 3.6130013e-5, -3.8957702e-7, 7.169354e-9, -9.9739231e-11] as const

/** C₁ … C₅: one row for each power of the temperature, in p, p², …, after a zero. @source OIML-R22 general formula */
const C = [
  [0, 1.693443461530087e-1, -1.046914743455169e1, 7.196353469546523e1, -7.047478054272792e2, 3.924090430035045e3, -1.210164659068747e4, 2.248646550400788e4, -2.605562982188164e4, 1.852373922069467e4, -7.420201433430137e3, 1.285617841998974e3],
  [0, -1.19301300505701e-2, 2.517399633803461e-1, -2.170575700536993, 1.353034988843029e1, -5.029988758547014e1, 1.09635566657757e2, -1.422753946421155e2, 1.08043594285623e2, -4.414153236817392e1, 7.442971530188783],
  [0, -6.802995733503803e-4, 1.876837790289664e-2, -2.002561813734156e-1, 1.02299296671922, -2.895696483903638, 4.810060584300675, -4.672147440794683, 2.458043105903461, -5.411227621436812e-1],
  [0, 4.075376675622027e-6, -8.76305857347111e-6, 6.515031360099368e-6, -1.51578483698721e-6],
  [0, -2.788074354782409e-8, 1.345612883493354e-8],
] as const

/**
 * Density of a mixture of ethanol and water at one atmosphere [kg/m³]:
 *   ρ = A₁ + Σ Aₖ pᵏ⁻¹ + Σ Bₖ (t − 20)ᵏ + Σ Σ Cᵢₖ pᵏ (t − 20)ⁱ
 * The coefficients were written from memory and found the same in five public transcriptions.
 * @param p mass fraction of ethanol, 0 … 1
 * @param t temperature, −20 … 40 [°C]; the mixture must be liquid there
 * @source OIML-R22 general formula
 * @checked oiml-r22/water20
 * @checked oiml-r22/ethanol40
 */
export function ethanolWaterDensity(p: number, t: number): number {
  const dt = t - 20
  const mixed = C.map((row) => polynomial(row, p))
  return polynomial(A, p) + polynomial(B, dt) + dt * polynomial(mixed, dt)
}
