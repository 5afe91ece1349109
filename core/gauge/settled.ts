import type { Finding } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import type { Citation } from '../sources.ts'

/** By what it is judged whether a tank was still. */
export interface SettledRule {
  /** How long before the moment is looked at [min]. */
  readonly minutes: number
  /** Greatest rate of level change, by the straight line that fits best [mm/h]. */
  readonly rate: number
  /** Greatest difference between any two levels in that time [mm]. */
  readonly spread: number
  /** Longest time without a reading [min]. */
  readonly gap: number
  /** Fewest readings. */
  readonly readings: number
  /** A change between two still times by more than this is a movement [mm]. */
  readonly movement: number
  readonly clause: Citation
  readonly says: string
}

/** The house's rule. common practice, no source: contracts and local rules may ask for more. */
export const SETTLED: SettledRule = {
  minutes: 20, rate: 6, spread: 3, gap: 10, readings: 3, movement: 20, clause: 'COMMON-PRACTICE settled tank',
  says: 'the level changed by no more than 6 mm/h and 3 mm over the last 20 minutes, read at least every 10 minutes (common practice, no source)',
}

/** A level at a time. */
export interface TimedLevel {
  /** Minutes from any fixed instant. */
  readonly minute: number
  /** Level above datum [mm]. */
  readonly level: number
}

/** Whether a tank was still at a moment; the rate where it could be told, and why it was not. */
export interface Settled { readonly settled: boolean; readonly rate: number | undefined; readonly why: string }

/**
 * Whether a tank was still at the last of some readings: enough of them over the stated time, the slope of the straight line
 * through them below a rate, and none far from another.
 *   rate = Σ (t − t̄)(L − L̄) / Σ (t − t̄)²
 * @param readings oldest first; the last is the moment that is judged
 * @param rule by what it is judged
 * @source COMMON-PRACTICE settled tank
 */
export function judgeSettled(readings: readonly TimedLevel[], rule: SettledRule = SETTLED): Settled {
  const moment = readings.at(-1)
  if (moment === undefined) return { settled: false, rate: undefined, why: 'there is no reading' }
  const seen = windowBefore(readings, moment, rule.minutes)
  const [first] = seen
  const long = first === undefined ? 0 : moment.minute - first.minute
  if (long < rule.minutes || seen.length < rule.readings) {
    return { settled: false, rate: undefined, why: `${seen.length === 1 ? 'one reading' : `${seen.length} readings`} over the last ${minutes(long)}; too few to tell` }
  }
  const gap = seen.slice(1).reduce((most, { minute }, i) => Math.max(most, minute - (seen[i]?.minute ?? minute)), 0)
  if (gap > rule.gap) return { settled: false, rate: undefined, why: `no reading for ${minutes(gap)}` }
  const rate = slope(seen) * 60
  const levels = seen.map(({ level }) => level)
  const spread = Math.max(...levels) - Math.min(...levels)
  const shown = `${discriminate('level uncertainty mm', rate).text} mm/h`
  if (Math.abs(rate) > rule.rate) return { settled: false, rate, why: `the level changed by ${shown}` }
  if (spread > rule.spread) return { settled: false, rate, why: `the level went up and down by ${discriminate('level uncertainty mm', spread).text} mm` }
  return { settled: true, rate, why: `the level changed by ${shown}` }
}

/**
 * Readings over at least a time up to a moment: those within it, and the last one before it.
 * @param readings oldest first
 * @param moment the last of them that counts
 * @param length how far back [min]
 * @source COMMON-PRACTICE settled tank
 */
export function windowBefore<T extends TimedLevel>(readings: readonly T[], moment: TimedLevel, length: number): readonly T[] {
  const from = readings.findLastIndex(({ minute }) => minute <= moment.minute - length)
  return readings.slice(from < 0 ? 0 : from).filter(({ minute }) => minute <= moment.minute)
}

/** Slope of the straight line by least squares [mm/min]; 0 for readings all at one time. */
function slope(readings: readonly TimedLevel[]): number {
  const n = readings.length
  const t = readings.reduce((sum, { minute }) => sum + minute, 0) / n
  const l = readings.reduce((sum, { level }) => sum + level, 0) / n
  const above = readings.reduce((sum, { minute, level }) => sum + (minute - t) * (level - l), 0)
  const below = readings.reduce((sum, { minute }) => sum + (minute - t) ** 2, 0)
  return below === 0 ? 0 : above / below
}

function minutes(count: number): string {
  return `${discriminate('level uncertainty mm', count).text} min`
}

/**
 * The exception for a gauge taken before the tank was still; empty when it was.
 * @param judged of the moment
 * @param path of the snapshot's log
 * @param rule by what it was judged
 * @source COMMON-PRACTICE settled tank
 */
export function unsettled(judged: Settled, path: string, rule: SettledRule = SETTLED): readonly Finding[] {
  return judged.settled ? [] : [{ code: 'gauge-not-settled', path, value: judged.why, limit: rule.says, clause: rule.clause }]
}
