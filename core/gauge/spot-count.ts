import type { Finding } from '../refusal/index.ts'
import type { Citation } from '../sources.ts'
import { Decimal, type TemperatureUnit } from '../units/index.ts'

/** A depth above a break [mm], or right at it where the rule says so, needs so many temperatures; the deepest break first. */
interface SpotRule { readonly breaks: readonly { readonly above: string; readonly orAt: boolean; readonly spots: number }[]; readonly clause: Citation; readonly mark: string }

/**
 * How many spot temperatures a depth of liquid needs. The two that were found disagree: API MPMS 7 (from memory) asks for
 * three above 10 ft, two from 5 to 10 ft, one below; an inspector's handbook, read in the source, asks for three above 6 m only.
 * The stricter one is used.
 * @source MPMS-7 number of temperatures
 * @checked API7-NTEMP
 * @checked API7-NTEMP-OGC
 */
export const SPOT_RULES = {
  'MPMS-7': { breaks: [{ above: '3048', orAt: false, spots: 3 }, { above: '1524', orAt: true, spots: 2 }], clause: 'MPMS-7 number of temperatures', mark: 'from memory' },
  'inspectors-handbook': { breaks: [{ above: '6000', orAt: false, spots: 3 }], clause: 'COMMON-PRACTICE number of temperatures', mark: 'read in a training handbook for inspectors' },
} as const satisfies Record<string, SpotRule>

/** Levels that differ by more need extra readings between them. @source COMMON-PRACTICE number of temperatures */
const SPREAD: { readonly [U in TemperatureUnit]: string } = { degC: '1', degF: '2' }

/**
 * How many spot temperatures a depth of liquid needs.
 * @param depthMm liquid above the free water [mm]
 * @param rule which of the rules
 * @source MPMS-7 number of temperatures
 */
export function spotsNeeded(depthMm: Decimal, rule: keyof typeof SPOT_RULES = 'MPMS-7'): number {
  const { breaks }: SpotRule = SPOT_RULES[rule]
  return breaks.find(({ above, orAt }) => depthMm.gt(above) || (orAt && depthMm.eq(above)))?.spots ?? 1
}

/**
 * Fewer spots than the depth needs, or levels that differ by more than 1 °C (2 °F) with no extra readings between them: both are
 * exceptions, `spots-too-few` and `spots-differ`.
 * @param temperatures of the spots, in `unit`
 * @param depthMm liquid above the free water [mm]
 * @param path of the spots
 * @source MPMS-7 number of temperatures
 */
export function judgeSpots(temperatures: readonly Decimal[], unit: TemperatureUnit, depthMm: Decimal, path: string): readonly Finding[] {
  const needed = spotsNeeded(depthMm)
  const spread = Decimal.max(...temperatures).minus(Decimal.min(...temperatures))
  const clause = SPOT_RULES['MPMS-7'].clause
  if (temperatures.length < needed) return [{ code: 'spots-too-few', path, value: String(temperatures.length), limit: `${needed} for ${depthMm.toFixed()} mm of liquid`, clause }]
  if (spread.gt(SPREAD[unit]) && temperatures.length <= needed) {
    return [{ code: 'spots-differ', path, value: `${spread.toFixed()} ${unit}`, limit: `${SPREAD[unit]} ${unit}, or extra readings equally spaced between them`, clause: 'COMMON-PRACTICE number of temperatures' }]
  }
  return []
}
