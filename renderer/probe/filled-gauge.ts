import { fieldsOfProbe, pickedFrom, probeAtLine, probeProfile, type GaugeLog, type PickedFromLog, type ProbeProfile, type ProbeSetup, type WrittenProbe } from '../../core/gauge/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { EMPTY_GAUGE, type GaugeForm } from '../gauge/gauge-form.ts'
import { localTime } from '../parts/local-time.ts'

/** When and by whom a probe was read, in the terminal's time; and where in a log. */
interface Taken { readonly at: string; readonly by: string; readonly log: PickedFromLog | null }

/** A gauge sheet filled from a probe: what the probe cannot know stays empty. Undefined where it sees no product. A log goes with it while the time is the log's. */
export function gaugeFromProbe(profile: ProbeProfile, probe: WrittenProbe, { at, by, log }: Taken, zone: string): GaugeForm | undefined {
  const fields = fieldsOfProbe(profile, 'probe')
  if (!fields.ok) return undefined
  const { level, liquid, density, densityTemperature, waterCut, spots } = fields.value
  const logged = log?.levels.at(-1)?.at
  return {
    ...EMPTY_GAUGE, at, by, levelBy: 'innage', level, liquid, density, densityTemperature, instrument: 'probe', waterCut: waterCut ?? '', waterBy: waterCut === undefined ? 'gauge' : 'probe',
    spots: spots.map((spot) => ({ ...spot })), probe: { ...probe, sample: '' }, log: logged !== undefined && localTime(logged, zone) === at ? log : null,
  }
}

/** What a line of a log is read with: the tank, and its probe where a level was computed from the line's pressures. */
export interface LogReading { readonly tank: Tank; readonly setup: ProbeSetup | undefined; readonly computed: readonly number[]; readonly zone: string }

/** A gauge sheet filled from a line of a gauge log: what the log does not say stays empty. Undefined where the line has no level. */
export function gaugeFromLog(log: GaugeLog, line: number, { tank, setup, computed, zone }: LogReading): GaugeForm | undefined {
  const picked = pickedFrom(log, tank.code, line)
  const written = log.lines.find((one) => one.line === line)
  if (!picked.ok || written?.level === undefined) return undefined
  const at = localTime(written.at, zone)
  const said = { ambient: written.ambient ?? '', pressure: written.pressure ?? '' }
  if (computed.includes(line) && setup !== undefined) {
    const probe = probeAtLine(written, setup)
    const profile = probe && probeProfile({ ...probe, capacityTable: tank.capacityTable }, 'probe')
    const filled = probe && profile?.ok ? gaugeFromProbe(profile.value, probe, { at, by: '', log: picked.value }, zone) : undefined
    return filled && { ...filled, ...said, ...(filled.waterBy === 'gauge' && { waterCut: written.waterCut ?? '' }) }
  }
  return {
    ...EMPTY_GAUGE, ...said, at, levelBy: 'innage', level: written.level, liquid: written.temperature ?? '', waterCut: written.waterCut ?? '',
    density: written.density ?? '', densityTemperature: written.densityTemperature ?? '', ...(written.density === undefined ? {} : { instrument: 'density-meter' as const }),
    ...(written.gauge === undefined ? {} : { readBy: 'automatic' as const, gaugeId: written.gauge }), log: picked.value,
  }
}
