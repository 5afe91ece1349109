import { z } from 'zod'
import { accepted, andThen, wording, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import type { GaugeLog, LoggedLine } from './gauge-log.ts'
import { checkCovered } from './probe-figures.ts'
import { countCovered } from './probe-level.ts'
import { readProbe } from './probe-reading.ts'
import { probeModuleSchema, probeReadingSchema, type WrittenProbe } from './probe.ts'

/** What a log does not say of its probe: names, heights and offsets of its modules, lowest first, and its settings. */
export const probeSetupSchema = probeReadingSchema.extend({ modules: z.array(probeModuleSchema.omit({ pressure: true, temperature: true })).min(3).max(12) })
export type ProbeSetup = Readonly<z.infer<typeof probeSetupSchema>>

/** A log with levels computed from pressures, the lines that have such a level, and why others have none. */
export interface ComputedLevels { readonly log: GaugeLog; readonly computed: readonly number[]; readonly findings: readonly Finding[] }

/** The probe as it read at a line of a log; undefined where the line has no modules. @param line of a log @param setup what the log does not say */
export function probeAtLine({ modules: read }: LoggedLine, setup: ProbeSetup): WrittenProbe | undefined {
  if (read === undefined) return undefined
  return { ...setup, modules: setup.modules.flatMap((module, i) => { const at = read[i]; return at === undefined ? [] : [{ ...module, ...at }] }) }
}

/**
 * The level by a probe alone, as {@link probeProfile} prints it: `12660 mm`.
 * Refuses what a probe's reading refuses, and `out-of-range` where no level follows from it.
 * @param probe as read
 * @param path of the probe
 * @source MPMS-16.2 level from head pressure
 */
export function probeLevel(probe: WrittenProbe, path: string): Outcome<string> {
  const at = (field: string): string => `${path}.${field}`
  return andThen(readProbe(probe, path), (reading) => andThen(checkCovered(reading, countCovered(reading), at), ({ level }) => accepted(`${discriminate('level mm', level * 1000).text} mm`)))
}

/**
 * A log in which the lines of a tank that have a probe's pressures but no level have the level that follows from them. What a
 * line says itself stays; a line that the instrument calls at fault, or whose pressures give no level, stays without one.
 * @param log as read from its file
 * @param tank code
 * @param setup of the tank's probe
 * @param path of the log, for the findings: `log.line 7.modules`
 * @source MPMS-16.2 level from head pressure
 */
export function withProbeLevels(log: GaugeLog, tank: string, setup: ProbeSetup, path = 'log'): ComputedLevels {
  const computed: number[] = []
  const findings: Finding[] = []
  const lines = log.lines.map((line): LoggedLine => {
    const probe = line.tank === tank && line.level === undefined && line.status !== 'fault' ? probeAtLine(line, setup) : undefined
    if (probe === undefined) return line
    const place = `${path}.line ${line.line}`
    const [read, known] = [line.modules?.length ?? 0, setup.modules.length]
    if (read !== known) {
      findings.push({ code: 'out-of-range', path: `${place}.modules`, value: `${read} modules`, limit: `${known}, as many as the probe of ${tank} has`, clause: 'MPMS-16.2 pressure sensors' })
      return line
    }
    const level = probeLevel(probe, place)
    if (!level.ok) { findings.push(...level.findings); return line }
    computed.push(line.line)
    return { ...line, level: level.value }
  })
  return { log: { ...log, lines }, computed, findings }
}

export const fromPressuresSchema = z.strictObject({
  /** Lines whose level was computed. */
  lines: z.array(z.number()),
  /** Lines with pressures that give no level, and why. */
  without: z.array(z.strictObject({ path: z.string(), message: z.string() })),
})

/** Which levels of a log were computed, to be said beside what was picked from it. @param levels of {@link withProbeLevels} */
export function saidOfPressures({ computed, findings }: ComputedLevels): z.infer<typeof fromPressuresSchema> {
  return { lines: [...computed], without: findings.map((finding) => ({ path: finding.path, message: wording(finding) })) }
}
