import type { BaseTemperature } from './commodity.ts'

/**
 * HYC: correction of a glass hydrometer's reading for the expansion of its glass, by the temperature Tc at which the
 * hydrometer is graduated:
 *   60 °F: HYC = 1 − 0.00001278 (t − 60) − 0.0000000062 (t − 60)²   (t in °F)
 *   15 or 20 °C: HYC = 1 − 0.000023 (t − Tc) − 0.00000002 (t − Tc)²   (t in °C)
 * The reading, as a density, is multiplied by it before the base density is sought.
 * @param graduatedAt Tc; 60 °F for a hydrometer in °API or relative density
 * @param t temperature of the reading [°F]
 * @source MPMS-9 glass hydrometer correction
 * @checked d1250-80/5B/40.5/83
 */
export function hydrometerCorrection(graduatedAt: BaseTemperature, t: number): number {
  if (graduatedAt === '60 degF') return 1 - 0.00001278 * (t - 60) - 0.0000000062 * (t - 60) ** 2
  const dt = (t - 32) / 1.8 - (graduatedAt === '15 degC' ? 15 : 20)
  return 1 - 0.000023 * dt - 0.00000002 * dt ** 2
}
