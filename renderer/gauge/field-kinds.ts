import type { GaugeField } from './gauge-form.ts'
import type { WrittenKind } from './usual-units.ts'

const KINDS: Readonly<Partial<Record<GaugeField, WrittenKind>>> = {
  level: 'level', referenceHeight: 'level', waterCut: 'cut', liquid: 'temperature', ambient: 'temperature', density: 'density',
  densityTemperature: 'temperature', densityPressure: 'pressure', sedimentAndWater: 'share', pressure: 'pressure',
}

/** What kind of value a line holds. */
export function kindOf(field: GaugeField): WrittenKind {
  if (field.endsWith('.level')) return 'level'
  if (field.endsWith('.temperature')) return 'temperature'
  return KINDS[field] ?? 'words'
}

/** Paths of a snapshot and the line each belongs to; the longest that fits is taken. */
const LINE_OF_PATH: readonly (readonly [string, GaugeField])[] = [
  ['level.observedReferenceHeight', 'referenceHeight'], ['level', 'level'], ['waterCut', 'waterCut'],
  ['temperatures.liquid', 'liquid'], ['temperatures.ambient', 'ambient'], ['temperatures', 'liquid'], ['pressure', 'pressure'],
  ['density.temperature', 'densityTemperature'], ['density.pressure', 'densityPressure'], ['density.instrument', 'instrument'], ['density', 'density'],
  ['sedimentAndWater', 'sedimentAndWater'], ['remarks', 'remarks'], ['at', 'at'], ['by', 'by'],
]

/** The line that a path within a snapshot belongs to: `temperatures.spots.1.level` → `spots.1.level`. */
export function lineOfPath(path: string): GaugeField | undefined {
  const spot = /^temperatures\.spots\.(\d+)(?:\.(level|temperature))?$/.exec(path)
  if (spot) return `spots.${Number(spot[1])}.${spot[2] === 'temperature' ? 'temperature' : 'level'}`
  const found = LINE_OF_PATH.filter(([start]) => path === start || path.startsWith(`${start}.`))
  return found.sort((a, b) => b[0].length - a[0].length)[0]?.[1]
}
