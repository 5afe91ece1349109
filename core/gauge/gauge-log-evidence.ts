import { accepted, allOf, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import { millimetres, parseLength, type Length } from '../units/index.ts'
import { exceptionFrom, inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import { minuteOf, parseInstant, type Instant } from './instant.ts'
import { NO_EVIDENCE, type Evidence } from './probe-snapshot.ts'
import { judgeSettled, SETTLED, unsettled, type TimedLevel } from './settled.ts'
import type { GaugeSnapshot } from './snapshot.ts'

/**
 * Whether the tank was still when a gauge that was picked from a log was taken: a line for the worksheet, and an exception
 * to be printed where it was not. The snapshot's time and level must be those of the log, `gauge-differs-from-log`; a
 * snapshot with a probe has its level from the probe's pressures, and only its time is the log's.
 * Refuses texts that cannot be read, and `log-not-in-order`.
 * @param snapshot with or without a log
 * @param path of the snapshot
 * @source COMMON-PRACTICE settled tank
 */
export function logEvidence(snapshot: GaugeSnapshot, path: string): Outcome<Evidence> {
  const { log } = snapshot
  if (log === undefined) return accepted(NO_EVIDENCE)
  const findings: Finding[] = []
  const levels: (TimedLevel & { readonly order: string })[] = []
  for (const [i, written] of log.levels.entries()) {
    const place = `${path}.log.levels.${i + 1}`
    const read = allOf<{ at: Instant; level: Length }>({ at: parseInstant(written.at, `${place}.at`), level: parseLength(written.level, `${place}.level`) })
    if (!read.ok) { findings.push(...read.findings); continue }
    const { at, level } = read.value
    const before = levels.at(-1)
    if (before !== undefined && at.order <= before.order) findings.push({ code: 'log-not-in-order', path: `${place}.at`, value: written.at, limit: log.levels[i - 1]?.at ?? before.order, clause: 'HOUSE gauge log' })
    levels.push({ minute: minuteOf(at), level: millimetres(level).toNumber(), order: at.order })
  }
  findings.push(...differs(snapshot, levels, path))
  if (findings.length > 0) return refused(...findings)
  const judged = judgeSettled(levels)
  return accepted({ lines: lines(log, judged.rate), exceptions: unsettled(judged, `${path}.log`).map(exceptionFrom) })
}

/** Time and level of the snapshot, unless a probe gives it, are those of the last reading that it keeps. */
function differs({ at, level, log, probe }: GaugeSnapshot, levels: readonly (TimedLevel & { readonly order: string })[], path: string): readonly Finding[] {
  const last = log?.levels.at(-1)
  const read = levels.at(-1)
  if (last === undefined || read === undefined || levels.length < (log?.levels.length ?? 0)) return []
  const findings: Finding[] = []
  const clause = 'HOUSE gauge log'
  const instant = parseInstant(at, '')
  if (instant.ok && instant.value.order !== read.order) findings.push({ code: 'gauge-differs-from-log', path: `${path}.at`, value: at, limit: last.at, clause })
  if (probe !== undefined) return findings
  const innage = 'innage' in level ? parseLength(level.innage, '') : undefined
  if (innage === undefined) findings.push({ code: 'gauge-differs-from-log', path: `${path}.level`, value: 'a level that is not the log\'s', limit: last.level, clause })
  else if (innage.ok && !millimetres(innage.value).equals(read.level) && 'innage' in level) findings.push({ code: 'gauge-differs-from-log', path: `${path}.level.innage`, value: level.innage, limit: last.level, clause })
  return findings
}

function lines(log: NonNullable<GaugeSnapshot['log']>, rate: number | undefined): readonly WorksheetLine[] {
  const place = inputLine({ symbol: 'LOG', name: 'Line of the gauge log', value: String(log.line), unit: '', clause: 'HOUSE gauge log', notes: [log.file] })
  if (rate === undefined) return [place]
  return [place, roundedLine({ symbol: 'dL/dt', name: 'Rate of level change before the gauge', unit: 'mm/h', formula: 'Σ (t − t̄)(L − L̄) / Σ (t − t̄)²', clause: SETTLED.clause, from: ['LOG'], rounded: discriminate('level uncertainty mm', rate), notes: [`settled: ${SETTLED.says}`] })]
}
