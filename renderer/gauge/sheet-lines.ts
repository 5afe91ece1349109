import { words } from '../words/en.ts'
import { linesOf, type GaugeField, type GaugeForm } from './gauge-form.ts'

const ORDER: readonly GaugeField[] = [
  'at', 'by', 'levelBy', 'level', 'referenceHeight', 'waterCut', 'liquid', 'ambient', 'instrument', 'density', 'densityTemperature',
  'densityPressure', 'sedimentAndWater', 'pressure', 'remarks',
]

/** The lines of a sheet of several gauges: each that one of them has, in the sheet's order, spots last. */
export function sheetLines(forms: readonly GaugeForm[]): readonly GaugeField[] {
  const has = new Set(forms.flatMap(linesOf))
  const spots = [...has].filter((line) => line.startsWith('spots.')).sort((a, b) => a.localeCompare(b, 'en', { numeric: true }))
  return [...ORDER.filter((line) => has.has(line)), ...spots]
}

/** The head of a line, as the sheet writes it at the left. */
export function headOf(line: GaugeField, forms: readonly GaugeForm[]): string {
  const { heads } = words.gauge
  const spot = /^spots\.(\d+)\.(level|temperature)$/.exec(line)
  if (spot) return spot[2] === 'level' ? words.gauge.spotHead(Number(spot[1]) + 1) : '…'
  if (line === 'level') {
    const by = new Set(forms.map((form) => form.levelBy))
    return by.size > 1 ? heads.either : by.has('ullage') ? heads.ullage : heads.innage
  }
  return heads[line as Exclude<keyof typeof heads, 'clock'>] ?? line
}
