import { accepted, allOf, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { millimetres, type Length } from '../units/index.ts'
import { notNegative } from './level-reading.ts'
import { minuteOf, parseInstant, type Instant } from './instant.ts'
import type { GaugeLog, LoggedLine } from './gauge-log.ts'
import type { TimedLevel } from './settled.ts'

/** A line of a log with its level and time read. */
export interface LoggedLevel extends TimedLevel { readonly written: LoggedLine & { readonly level: string } }

/**
 * Levels of one tank in a log, in order of time. A line that says the instrument was at fault, or has no level, is left out.
 * Refuses `unknown-tank`, `missing-value` where no line of the tank has a level, `log-not-in-order`, and texts that cannot be
 * read: every wrong line at once, by its number in the file.
 * @param log as read from its file
 * @param tank code
 * @param path of the log
 * @source HOUSE gauge log
 */
export function levelsOf(log: GaugeLog, tank: string, path: string): Outcome<readonly LoggedLevel[]> {
  const own = log.lines.filter((line) => line.tank === tank)
  if (own.length === 0) return refused({ code: 'unknown-tank', path, value: tank, limit: [...new Set(log.lines.map((line) => line.tank))].join(', '), clause: 'HOUSE gauge log' })
  const findings: Finding[] = []
  const levels: LoggedLevel[] = []
  let before: Instant | undefined
  for (const line of own) {
    const place = `${path}.line ${line.line}`
    const at = parseInstant(line.at, `${place}.at`)
    if (at.ok && before !== undefined && at.value.order <= before.order) findings.push({ code: 'log-not-in-order', path: `${place}.at`, value: line.at, limit: before.text, clause: 'HOUSE gauge log' })
    if (at.ok) before = at.value
    if (line.level === undefined || line.status === 'fault') { if (!at.ok) findings.push(...at.findings); continue }
    const read = allOf<{ at: Instant; level: Length }>({ at, level: notNegative(line.level, `${place}.level`) })
    if (!read.ok) findings.push(...read.findings)
    else levels.push({ minute: minuteOf(read.value.at), level: millimetres(read.value.level).toNumber(), written: { ...line, level: line.level } })
  }
  if (findings.length > 0) return refused(...findings)
  if (levels.length > 0) return accepted(levels)
  return refused({ code: 'missing-value', path, value: '', limit: `no line of ${tank} has a level${own.some(({ modules }) => modules !== undefined) ? ', and the heights of its probe are not known' : ''}`, clause: 'HOUSE gauge log' })
}
