import { fieldsOfProbe, pickedFrom, type GaugeLog, type ProbeProfile, type WrittenProbe } from '../../core/gauge/index.ts'
import { EMPTY_GAUGE, type GaugeForm } from '../gauge/gauge-form.ts'
import { localTime } from '../parts/local-time.ts'

/** A gauge sheet filled from a probe: what the probe cannot know stays empty. Undefined where it sees no product. */
export function gaugeFromProbe(profile: ProbeProfile, probe: WrittenProbe, { at, by }: { readonly at: string; readonly by: string }): GaugeForm | undefined {
  const fields = fieldsOfProbe(profile, 'probe')
  if (!fields.ok) return undefined
  const { level, liquid, density, densityTemperature, waterCut, spots } = fields.value
  return {
    ...EMPTY_GAUGE, at, by, levelBy: 'innage', level, liquid, density, densityTemperature, instrument: 'probe', waterCut: waterCut ?? '', waterBy: waterCut === undefined ? 'gauge' : 'probe',
    spots: spots.map((spot) => ({ ...spot })), probe: { ...probe, sample: '' },
  }
}

/** A gauge sheet filled from a line of a gauge log: what the log does not say stays empty. Undefined where the line has no level. */
export function gaugeFromLog(log: GaugeLog, tank: string, line: number, zone: string): GaugeForm | undefined {
  const picked = pickedFrom(log, tank, line)
  const written = log.lines.find((one) => one.line === line)
  if (!picked.ok || written?.level === undefined) return undefined
  return {
    ...EMPTY_GAUGE, at: localTime(written.at, zone), levelBy: 'innage', level: written.level, liquid: written.temperature ?? '', ambient: written.ambient ?? '', waterCut: written.waterCut ?? '',
    pressure: written.pressure ?? '', density: written.density ?? '', densityTemperature: written.densityTemperature ?? '', ...(written.density === undefined ? {} : { instrument: 'density-meter' as const }),
    ...(written.gauge === undefined ? {} : { readBy: 'automatic' as const, gaugeId: written.gauge }), log: picked.value,
  }
}
