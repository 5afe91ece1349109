import type { GaugeSnapshot } from '../../core/gauge/index.ts'
import { readLocalTime, type ReadTime } from '../parts/local-time.ts'
import type { GaugeForm } from './gauge-form.ts'

/**
 * The snapshot on the sheet: texts as they were typed, the time as an instant. A time that cannot be read is handed on
 * as it stands, beside the reason. What is made from readings, spots or samples is left out.
 */
export function snapshotFrom(form: GaugeForm, tank: string, product: string, zone: string): { readonly snapshot: GaugeSnapshot; readonly time: ReadTime } {
  const time = readLocalTime(form.at, zone)
  const spots = form.spots.filter((spot) => spot.level !== '' || spot.temperature !== '')
  const sampled = form.samples.length > 0
  const tape = tapeOn(form)
  const hybrid = hybridOn(form)
  return {
    time,
    snapshot: {
      tank, product, at: time.ok ? time.instant : form.at, by: form.by,
      level: levelOn(form),
      ...waterOn(form),
      temperatures: {
        ...(form.average === 'entered' ? { liquid: form.liquid } : { average: form.average }),
        ...given('ambient', form.ambient), ...(spots.length > 0 && { spots }),
      },
      ...given('pressure', form.pressure),
      ...(sampled ? { samples: samplesOn(form, zone) } : hybrid !== undefined && form.density.trim() === '' ? { sedimentAndWater: form.sedimentAndWater } : { density: densityOn(form), sedimentAndWater: form.sedimentAndWater }),
      ...(tape && { tape }),
      ...(form.readBy === 'automatic' && { instrument: { kind: 'automatic' as const, id: form.gaugeId, status: form.gaugeStatus } }),
      ...(hybrid && { hybrid }),
      ...(form.probe && { probe: probeOn(form.probe) }), ...(form.log && { log: form.log }),
      ...given('roofLoad', form.roofLoad), ...given('criticalZoneReason', form.criticalZoneReason), ...given('remarks', form.remarks),
    },
  }
}

function waterOn({ waterBy, waterCut, waterVolume, waterOrigin }: GaugeForm): Pick<GaugeSnapshot, 'waterCut' | 'waterBy' | 'waterVolume'> {
  if (waterBy === 'volume') return { waterVolume: { volume: waterVolume, origin: waterOrigin } }
  return { waterCut, ...(waterBy !== 'gauge' && { waterBy }) }
}

function levelOn(form: GaugeForm): GaugeSnapshot['level'] {
  const seen = form.levelBy === 'ullage' ? given('observedReferenceHeight', form.referenceHeight) : {}
  if (form.readings.length > 0) {
    const withBob = form.levelBy === 'ullage' && form.tape.bob !== 'none'
    return { by: form.levelBy, readings: form.readings.map(({ read, bob }) => ({ read, ...(withBob && { bob }) })), ...seen }
  }
  return form.levelBy === 'innage' ? { innage: form.level } : { ullage: form.level, ...seen }
}

function tapeOn({ tape, readings, levelBy }: GaugeForm): GaugeSnapshot['tape'] {
  const repeated = readings.length > 0
  const parts = {
    ...given('certificate', tape.certificate), ...given('temperature', tape.temperature), ...given('standardAt', tape.standardAt), ...given('correction', tape.correction),
    ...(repeated && levelBy === 'ullage' && tape.bob !== 'none' && { bob: tape.bob }),
    ...(repeated && tape.acceptance !== 'MPMS-3.1A' && { acceptance: tape.acceptance }),
  }
  return Object.keys(parts).length === 0 ? undefined : parts
}

function densityOn(form: GaugeForm): NonNullable<GaugeSnapshot['density']> {
  return {
    value: form.density, instrument: form.instrument,
    ...(form.instrument !== 'base' && given('temperature', form.densityTemperature)),
    ...((form.instrument === 'density-meter' || form.instrument === 'probe') && given('pressure', form.densityPressure)),
  }
}

function samplesOn({ samples }: GaugeForm, zone: string): NonNullable<GaugeSnapshot['samples']> {
  return samples.map(({ from, number, at, density, densityTemperature, instrument, sedimentAndWater }) => {
    const time = readLocalTime(at, zone)
    return { from, number, at: time.ok ? time.instant : at, density: { value: density, instrument, ...(instrument !== 'base' && given('temperature', densityTemperature)) }, sedimentAndWater }
  })
}

/** The probe as it was read; a sample that was not named is left out. */
function probeOn({ sample, ...probe }: NonNullable<GaugeForm['probe']>): NonNullable<GaugeSnapshot['probe']> {
  return { ...probe, ...given('sample', sample) }
}

function hybridOn({ hybrid }: GaugeForm): GaugeSnapshot['hybrid'] {
  if (Object.values(hybrid).every((value) => value.trim() === '')) return undefined
  const sensor = (height: string, pressure: string): { height: string; pressure: string } | undefined => (height.trim() === '' && pressure.trim() === '' ? undefined : { height, pressure })
  const [middle, top] = [sensor(hybrid.middleHeight, hybrid.middlePressure), sensor(hybrid.topHeight, hybrid.topPressure)]
  return {
    bottom: { height: hybrid.bottomHeight, pressure: hybrid.bottomPressure }, ...(middle && { middle }), ...(top && { top }), gravity: hybrid.gravity,
    ...given('vapourDensity', hybrid.vapourDensity), ...given('airDensity', hybrid.airDensity), ...given('limit', hybrid.limit),
  }
}

function given<K extends string>(key: K, value: string): { readonly [P in K]?: string } {
  return value.trim() === '' ? {} : ({ [key]: value } as { readonly [P in K]: string })
}
