import type { GaugeField } from './gauge-form.ts'
import type { WrittenKind } from './usual-units.ts'

const KINDS: Readonly<Partial<Record<GaugeField, WrittenKind>>> = {
  level: 'level', referenceHeight: 'level', waterCut: 'cut', waterVolume: 'volume', liquid: 'temperature', ambient: 'temperature', density: 'density',
  densityTemperature: 'temperature', densityPressure: 'pressure', sedimentAndWater: 'share', pressure: 'pressure',
  'tape.temperature': 'temperature', 'tape.standardAt': 'temperature', 'tape.correction': 'cut',
}
/** Kinds by the last word of a line in a list or a part. */
const KINDS_BY_ENDING: Readonly<Record<string, WrittenKind>> = {
  level: 'level', read: 'level', bob: 'cut', temperature: 'temperature', density: 'density', densityTemperature: 'temperature', sedimentAndWater: 'share',
  bottomHeight: 'level', middleHeight: 'level', topHeight: 'level', bottomPressure: 'pressure', middlePressure: 'pressure', topPressure: 'pressure',
}

/** What kind of value a line holds. */
export function kindOf(field: GaugeField): WrittenKind {
  const known = KINDS[field]
  if (known !== undefined || !field.includes('.') || field === 'tape.bob' || field === 'probe.sample') return known ?? 'words'
  return KINDS_BY_ENDING[field.split('.').at(-1) ?? ''] ?? 'words'
}

/** Paths of a snapshot and the line each belongs to; the longest that fits is taken. */
const LINE_OF_PATH: readonly (readonly [string, GaugeField])[] = [
  ['level.observedReferenceHeight', 'referenceHeight'], ['level', 'level'], ['level.readings', 'readings.0.read'], ['waterCut', 'waterCut'], ['waterBy', 'waterBy'], ['waterVolume', 'waterVolume'], ['waterVolume.origin', 'waterOrigin'],
  ['temperatures.liquid', 'liquid'], ['temperatures.ambient', 'ambient'], ['temperatures.average', 'average'], ['temperatures.spots', 'spots.0.level'], ['temperatures', 'liquid'], ['pressure', 'pressure'],
  ['density.temperature', 'densityTemperature'], ['density.pressure', 'densityPressure'], ['density.instrument', 'instrument'], ['density', 'density'],
  ['sedimentAndWater', 'sedimentAndWater'], ['samples', 'samples.0.number'], ['remarks', 'remarks'], ['at', 'at'], ['by', 'by'],
  ['tape', 'tape.certificate'], ['tape.temperature', 'tape.temperature'], ['tape.standardAt', 'tape.standardAt'], ['tape.correction', 'tape.correction'], ['tape.bob', 'tape.bob'], ['tape.acceptance', 'tape.acceptance'],
  ['instrument', 'gaugeId'], ['instrument.status', 'gaugeStatus'], ['roofLoad', 'roofLoad'], ['criticalZoneReason', 'criticalZoneReason'],
  ['probe.sample', 'probe.sample'], ['probe', 'level'], ['log', 'level'],
  ['hybrid', 'hybrid.bottomPressure'], ['hybrid.bottom.height', 'hybrid.bottomHeight'], ['hybrid.middle.height', 'hybrid.middleHeight'], ['hybrid.middle.pressure', 'hybrid.middlePressure'],
  ['hybrid.top.height', 'hybrid.topHeight'], ['hybrid.top.pressure', 'hybrid.topPressure'], ['hybrid.gravity', 'hybrid.gravity'],
  ['hybrid.vapourDensity', 'hybrid.vapourDensity'], ['hybrid.airDensity', 'hybrid.airDensity'], ['hybrid.limit', 'hybrid.limit'],
]

/** The line that a path within a snapshot belongs to: `temperatures.spots.1.level` → `spots.1.level`. */
export function lineOfPath(path: string): GaugeField | undefined {
  const spot = /^temperatures\.spots\.(\d+)(?:\.(level|temperature))?$/.exec(path)
  if (spot) return `spots.${Number(spot[1])}.${spot[2] === 'temperature' ? 'temperature' : 'level'}`
  const reading = /^level\.readings\.(\d+)(?:\.(read|bob))?$/.exec(path)
  if (reading) return `readings.${Number(reading[1])}.${reading[2] === 'bob' ? 'bob' : 'read'}`
  const sample = /^samples\.(\d+)(?:\.(.+))?$/.exec(path)
  if (sample) return `samples.${Number(sample[1])}.${samplePart(sample[2] ?? '')}`
  const found = LINE_OF_PATH.filter(([start]) => path === start || path.startsWith(`${start}.`))
  return found.sort((a, b) => b[0].length - a[0].length)[0]?.[1]
}

function samplePart(path: string): 'number' | 'at' | 'instrument' | 'density' | 'densityTemperature' | 'sedimentAndWater' {
  switch (path) {
    case 'at': case 'sedimentAndWater': return path
    case 'density.temperature': return 'densityTemperature'
    case 'density.instrument': return 'instrument'
    default: return path.startsWith('density') ? 'density' : 'number'
  }
}
