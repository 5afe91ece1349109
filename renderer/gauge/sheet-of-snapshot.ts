import type { GaugeSnapshot } from '../../core/gauge/index.ts'
import { localTime } from '../parts/local-time.ts'
import { EMPTY_GAUGE, type GaugeForm } from './gauge-form.ts'

/** A gauge sheet that says what a snapshot says, to be corrected. */
export function sheetOfSnapshot(snapshot: GaugeSnapshot, zone: string): GaugeForm {
  const { level, temperatures, density, tape, instrument } = snapshot
  return {
    ...EMPTY_GAUGE,
    at: localTime(snapshot.at, zone), by: snapshot.by,
    levelBy: 'innage' in level ? 'innage' : 'ullage' in level ? 'ullage' : level.by,
    level: 'innage' in level ? level.innage : 'ullage' in level ? level.ullage : '',
    readings: 'readings' in level ? level.readings.map(({ read, bob = '' }) => ({ read, bob })) : [],
    referenceHeight: 'innage' in level ? '' : (level.observedReferenceHeight ?? ''),
    waterCut: snapshot.waterCut ?? '', waterVolume: snapshot.waterVolume?.volume ?? '', waterOrigin: snapshot.waterVolume?.origin ?? '', liquid: temperatures.liquid ?? '', ambient: temperatures.ambient ?? '',
    average: temperatures.liquid === undefined ? (temperatures.average ?? 'by-volume') : 'entered',
    density: density?.value ?? '', densityTemperature: density?.temperature ?? '', densityPressure: density?.pressure ?? '', instrument: density?.instrument ?? 'hydrometer',
    sedimentAndWater: snapshot.sedimentAndWater ?? '', pressure: snapshot.pressure ?? '', spots: temperatures.spots ?? [], remarks: snapshot.remarks ?? '',
    tape: { acceptance: tape?.acceptance ?? 'MPMS-3.1A', bob: tape?.bob ?? 'none', temperature: tape?.temperature ?? '', standardAt: tape?.standardAt ?? '', correction: tape?.correction ?? '', certificate: tape?.certificate ?? '' },
    samples: (snapshot.samples ?? []).map((sample) => ({
      from: sample.from, number: sample.number, at: localTime(sample.at, zone), instrument: sample.density.instrument,
      density: sample.density.value, densityTemperature: sample.density.temperature ?? '', sedimentAndWater: sample.sedimentAndWater,
    })),
    readBy: instrument === undefined ? 'tape' : 'automatic', gaugeId: instrument?.id ?? '', gaugeStatus: instrument?.status ?? 'ok',
    hybrid: hybridOf(snapshot.hybrid),
    waterBy: snapshot.waterVolume === undefined ? (snapshot.waterBy ?? 'gauge') : 'volume', roofLoad: snapshot.roofLoad ?? '', criticalZoneReason: snapshot.criticalZoneReason ?? '',
    probe: snapshot.probe === undefined ? null : { ...snapshot.probe, sample: snapshot.probe.sample ?? '' }, log: snapshot.log ?? null,
  }
}

function hybridOf(hybrid: GaugeSnapshot['hybrid']): GaugeForm['hybrid'] {
  if (hybrid === undefined) return EMPTY_GAUGE.hybrid
  const { bottom, middle, top } = hybrid
  return {
    bottomHeight: bottom.height, bottomPressure: bottom.pressure, middleHeight: middle?.height ?? '', middlePressure: middle?.pressure ?? '',
    topHeight: top?.height ?? '', topPressure: top?.pressure ?? '', gravity: hybrid.gravity,
    vapourDensity: hybrid.vapourDensity ?? '', airDensity: hybrid.airDensity ?? '', limit: hybrid.limit ?? '',
  }
}
