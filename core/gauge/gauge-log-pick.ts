import { z } from 'zod'
import { accepted, andThen, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import { quantitySchema } from '../worksheet/index.ts'
import { gaugeLogSchema, type GaugeLog, type PickedFromLog } from './gauge-log.ts'
import { levelsOf, type LoggedLevel } from './gauge-log-levels.ts'
import { fromPressuresSchema, probeSetupSchema } from './gauge-log-probe.ts'
import { judgeSettled, SETTLED, windowBefore, type SettledRule } from './settled.ts'

export const pickGaugesInputSchema = z.strictObject({
  log: gaugeLogSchema, tank: z.string().min(1).max(40),
  /** The tank's probe, by which lines with pressures but no level have one. */
  probe: probeSetupSchema.optional(),
})

const place = z.strictObject({ line: z.number(), at: z.string(), level: quantitySchema })

export const pickedGaugesSchema = z.strictObject({
  tank: z.string(),
  /** By what it was judged, in words. */
  rule: z.string(),
  /** Every level of the tank, in order of time. */
  moments: z.array(place.extend({ settled: z.boolean(), why: z.string() })),
  /** From when to when the tank was still, and the level at the end of it. */
  still: z.array(z.strictObject({ from: place, to: place })),
  /** Between two still times: what moved, and the gauges that open and close it. */
  movements: z.array(z.strictObject({ kind: z.enum(['receipt', 'delivery']), opening: place, closing: place, change: quantitySchema })),
  /** Levels that were computed from a probe's pressures; absent where none was to be. */
  fromPressures: fromPressuresSchema.optional(),
})
export type PickedGauges = Readonly<z.infer<typeof pickedGaugesSchema>>
type Place = z.infer<typeof place>

/**
 * When a tank was still, and which moments open and close each movement: the last still moment before the level began to
 * change, and the first one after it stopped.
 * Refuses what {@link levelsOf} refuses.
 * @param log as read from its file
 * @param tank code
 * @param rule by what it is judged
 * @source COMMON-PRACTICE settled tank
 */
export function pickGauges(log: GaugeLog, tank: string, rule: SettledRule = SETTLED): Outcome<PickedGauges> {
  return andThen(levelsOf(log, tank, 'log'), (levels) => {
    const judged = levels.map((one, i) => ({ one, ...judgeSettled(recent(levels, i, rule), rule) }))
    const still: { from: LoggedLevel; to: LoggedLevel }[] = []
    for (const [i, { one, settled }] of judged.entries()) {
      if (!settled) continue
      const last = still.at(-1)
      if (last !== undefined && judged[i - 1]?.settled === true && Math.abs(one.level - last.to.level) <= rule.spread) last.to = one
      else still.push({ from: one, to: one })
    }
    return accepted({
      tank, rule: rule.says,
      moments: judged.map(({ one, settled, why }) => ({ ...placeOf(one), settled, why })),
      still: still.map(({ from, to }) => ({ from: placeOf(from), to: placeOf(to) })),
      movements: still.slice(1).flatMap(({ from: after }, i) => {
        const before = still[i]?.to
        return before === undefined || Math.abs(after.level - before.level) <= rule.movement ? [] : [movement(before, after)]
      }),
    })
  })
}

/** The readings that are looked at for the i-th: no more than the time before it. */
function recent(levels: readonly LoggedLevel[], i: number, rule: SettledRule): readonly LoggedLevel[] {
  const moment = levels[i]
  if (moment === undefined) return []
  const first = levels.slice(0, i).findLastIndex(({ minute }) => minute <= moment.minute - rule.minutes)
  return levels.slice(first < 0 ? 0 : first, i + 1)
}

function placeOf({ written, level }: LoggedLevel): Place {
  return { line: written.line, at: written.at, level: { value: discriminate('level uncertainty mm', level).text, unit: 'mm' } }
}

function movement(before: LoggedLevel, after: LoggedLevel): PickedGauges['movements'][number] {
  const change = after.level - before.level
  return { kind: change > 0 ? 'receipt' : 'delivery', opening: placeOf(before), closing: placeOf(after), change: { value: discriminate('level uncertainty mm', change).text, unit: 'mm' } }
}

/**
 * The part of a log that a snapshot picked from it keeps: file, line, and the levels by which it is judged whether the tank
 * was still. Refuses what {@link levelsOf} refuses, and `missing-value` for a line without a level.
 * @param log as read from its file
 * @param tank code
 * @param line of the file
 * @param rule how far back
 * @source COMMON-PRACTICE settled tank
 */
export function pickedFrom(log: GaugeLog, tank: string, line: number, rule: SettledRule = SETTLED): Outcome<PickedFromLog> {
  return andThen(levelsOf(log, tank, 'log'), (levels) => {
    const moment = levels.find(({ written }) => written.line === line)
    if (moment === undefined) return { ok: false, findings: [{ code: 'missing-value', path: `log.line ${line}`, value: '', limit: `no level of ${tank} stands there`, clause: 'HOUSE gauge log' }] }
    return accepted({ file: log.file, line, levels: windowBefore(levels, moment, rule.minutes).map(({ written }) => ({ at: written.at, level: written.level })) })
  })
}
