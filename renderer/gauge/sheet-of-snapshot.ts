import type { GaugeSnapshot } from '../../core/gauge/index.ts'
import { localTime } from '../parts/local-time.ts'
import type { GaugeForm } from './gauge-form.ts'

/** A gauge sheet that says what a snapshot says, to be corrected. */
export function sheetOfSnapshot(snapshot: GaugeSnapshot, zone: string): GaugeForm {
  const { level, temperatures, density } = snapshot
  const byInnage = 'innage' in level
  return {
    at: localTime(snapshot.at, zone), by: snapshot.by,
    levelBy: byInnage ? 'innage' : 'ullage',
    level: byInnage ? level.innage : level.ullage,
    referenceHeight: byInnage ? '' : (level.observedReferenceHeight ?? ''),
    waterCut: snapshot.waterCut, liquid: temperatures.liquid, ambient: temperatures.ambient ?? '',
    density: density.value, densityTemperature: density.temperature ?? '', densityPressure: density.pressure ?? '', instrument: density.instrument,
    sedimentAndWater: snapshot.sedimentAndWater, pressure: snapshot.pressure ?? '', spots: temperatures.spots ?? [], remarks: snapshot.remarks ?? '',
  }
}
