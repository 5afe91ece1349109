import type { Finding } from '../refusal/index.ts'
import { display } from '../rounding/index.ts'
import { psig, type Pressure } from '../units/index.ts'
import { COMPRESSIBILITY_RANGE, lightCompressibility, lightCpl, nearCritical } from './lpg-compressibility.ts'
import { ATMOSPHERE_PSI } from './lpg-limits.ts'
import { VAPOUR_PRESSURE_RD, vapourPressure, vapourPressureTemperatures } from './vapour-pressure.ts'

/** What a pressure does to a light hydrocarbon. */
export interface PressureEffect {
  /** Vapour pressure, gauge [psi]. */
  readonly vapour: number
  /** ΔP: pressure above the vapour pressure, 0 where it is not above it [psi]. */
  readonly above: number
  /** Compressibility factor [1/psi]; null where the pressure is not above the vapour pressure. */
  readonly F: number | null
  readonly cpl: number
}

/** The effect of a pressure, or why there is none. */
export type FoundEffect = { readonly ok: true; readonly effect: PressureEffect } | { readonly ok: false; readonly why: string }

/**
 * CPL of a light hydrocarbon under a gauge pressure, from its vapour pressure; 1 at and below that.
 * There is none outside the ranges of the two correlations: relative density 0.350 to 0.637 (0.676 at and below the vapour
 * pressure), −50 to 140 °F, not near the critical temperature.
 * @param RD60 relative density 60/60 °F
 * @param t temperature [°F]
 * @param P gauge pressure [psi]
 * @source MPMS-11.2.2
 * @source MPMS-11.2.5
 * @checked mpms12.2/ex5/cpl
 */
export function pressureEffect(RD60: number, t: number, P: number): FoundEffect {
  if (RD60 < VAPOUR_PRESSURE_RD.from || RD60 > VAPOUR_PRESSURE_RD.to) return { ok: false, why: `the vapour pressure is published for ${VAPOUR_PRESSURE_RD.from} to ${VAPOUR_PRESSURE_RD.to} RD` }
  const { from, to } = vapourPressureTemperatures(RD60)
  if (t < from || t > to) return { ok: false, why: `the vapour pressure of a liquid of ${display(RD60, 4)} RD is published for ${from} to ${display(to, 1)} degF` }
  const vapour = vapourPressure(RD60, t) - ATMOSPHERE_PSI
  const above = P - vapour
  if (above <= 0) return { ok: true, effect: { vapour, above: 0, F: null, cpl: 1 } }
  const { RD60: density, above: most } = COMPRESSIBILITY_RANGE
  if (RD60 > density.to) return { ok: false, why: `the compressibility is published for ${density.from} to ${density.to} RD` }
  if (nearCritical(RD60, t)) return { ok: false, why: 'the compressibility is not published near the critical temperature' }
  if (above > most) return { ok: false, why: `the compressibility is published to ${most} psi above the vapour pressure` }
  const F = lightCompressibility(RD60, t, above)
  return { ok: true, effect: { vapour, above, F, cpl: lightCpl(F, above) } }
}

/**
 * The finding for a pressure whose effect is not published.
 * @param pressure as written
 * @param path where it stood
 * @param why as {@link pressureEffect} gives it
 * @source MPMS-11.2.2
 */
export function noEffectPublished(pressure: Pressure, path: string, why: string): Finding {
  return { code: 'out-of-range', path, value: pressure.text, limit: `${why}; leave the pressure out where the liquid stands at its vapour pressure`, clause: psig(pressure) > 0 ? 'MPMS-11.2.2' : 'MPMS-11.2.5' }
}
