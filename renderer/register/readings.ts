import type { GaugeSnapshot } from '../../core/gauge/index.ts'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'

/** One line of what was read: its name, and the text of both gauges as it was written. */
export interface Reading { readonly name: string; readonly opening: string; readonly closing: string }

/** What was read at both gauges, side by side; lines that neither has are left out. */
export function readingsOf(opening: GaugeSnapshot, closing: GaugeSnapshot, zone: string): readonly Reading[] {
  const t = words.register.detail.readings
  const lines: readonly (readonly [string, (gauge: GaugeSnapshot) => string | undefined])[] = [
    [t.at, (gauge) => localTime(gauge.at, zone)],
    [t.by, (gauge) => gauge.by],
    [t.innage, (gauge) => ('innage' in gauge.level ? gauge.level.innage : undefined)],
    [t.ullage, (gauge) => ('ullage' in gauge.level ? gauge.level.ullage : undefined)],
    [t.observedReferenceHeight, (gauge) => ('innage' in gauge.level ? undefined : gauge.level.observedReferenceHeight)],
    [t.repeated, ({ level, tape }) => ('readings' in level ? `${level.by}: ${level.readings.map(({ read, bob }) => (bob === undefined ? read : `${read}, ${tape?.bob ?? ''} bob ${bob}`)).join('; ')}` : undefined)],
    [t.tape, ({ tape }) => tape && [tape.certificate, tape.temperature, tape.standardAt, tape.correction].filter(Boolean).join(', ')],
    [t.automatic, ({ instrument }) => instrument && `${instrument.id}, ${instrument.status}`],
    [t.waterCut, (gauge) => gauge.waterCut],
    [t.waterVolume, ({ waterVolume }) => waterVolume && `${waterVolume.volume}, ${waterVolume.origin}`],
    [t.liquid, (gauge) => gauge.temperatures.liquid],
    [t.spots, ({ temperatures }) => temperatures.spots?.map(({ level, temperature }) => `${temperature} at ${level}`).join('; ')],
    [t.ambient, (gauge) => gauge.temperatures.ambient],
    [t.pressure, (gauge) => gauge.pressure],
    [t.density, (gauge) => gauge.density?.value],
    [t.densityTemperature, (gauge) => gauge.density?.temperature],
    [t.densityPressure, (gauge) => gauge.density?.pressure],
    [t.instrument, (gauge) => gauge.density && words.register.detail.instruments[gauge.density.instrument]],
    [t.sedimentAndWater, (gauge) => gauge.sedimentAndWater],
    [t.samples, ({ samples }) => samples?.map(({ from, number, density, sedimentAndWater }) => `${from} ${number}: ${density.value}, ${sedimentAndWater}`).join('; ')],
    [t.pressures, ({ hybrid }) => hybrid && [hybrid.bottom, hybrid.middle, hybrid.top].flatMap((sensor) => (sensor ? [`${sensor.pressure} at ${sensor.height}`] : [])).join('; ')],
    [t.remarks, (gauge) => gauge.remarks],
  ]
  return lines.flatMap(([name, read]) => {
    const [first, last] = [read(opening), read(closing)]
    return first === undefined && last === undefined ? [] : [{ name, opening: first ?? '–', closing: last ?? '–' }]
  })
}
