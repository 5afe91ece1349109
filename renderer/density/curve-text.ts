import { withUnit } from '../gauge/usual-units.ts'
import { words } from '../words/en.ts'
import { completedPoint, curveUnits, MOST_POINTS, withPoints, type CurveForm, type CurvePointForm } from './curve-form.ts'
import type { BaseTemperature } from '../../core/volume-correction/index.ts'

/** A curve with what a text added to it, and the lines of the text that are no part of a curve. */
export interface ReadText { readonly curve: CurveForm; readonly points: number; readonly notRead: readonly string[] }

const ABOUT = ['certificate', 'laboratory', 'date', 'tolerance'] as const
/** What the head of a column says of its unit. */
const TEMPERATURE_UNITS = [[/°\s*f|deg\s*f|fahrenheit/i, 'degF'], [/°\s*c|deg\s*c|celsius/i, 'degC']] as const
const DENSITY_UNITS = [[/kg\s*\/\s*(m3|m³)/i, 'kg/m3'], [/(^|[^k])g\s*\/\s*(cm3|cm³|ml)/i, 'g/cm3']] as const

/**
 * Reads a table as it comes from a spreadsheet, a CSV file or a mail: a temperature and a density (or a factor) on each
 * line, parted by tab, semicolon, comma or blanks; a head line may name the units; lines as `certificate;4711` say where it
 * is from. The points replace those of the curve; bare numbers get their unit so that it is seen.
 */
export function readCurveText(before: CurveForm, text: string, base: BaseTemperature): ReadText {
  const points: CurvePointForm[] = []
  const notRead: string[] = []
  let curve = before
  let units: { temperature?: string | undefined; value?: string | undefined } = {}
  text.split(/\r?\n/).forEach((line, at) => {
    const cells = cellsOf(line)
    const [first = '', second = ''] = cells
    if (first === '' && cells.length < 2) return
    const about = ABOUT.find((name) => name === first.toLowerCase())
    if (about !== undefined) curve = { ...curve, [about]: cells.slice(1).join(', ') }
    else if (cells.length === 2 && startsWithNumber(first) && startsWithNumber(second)) points.push({ temperature: first, value: second })
    else if (cells.length >= 2 && points.length === 0 && !startsWithNumber(first) && !startsWithNumber(second)) {
      curve = { ...curve, of: /vcf|ctl|factor/i.test(second) ? 'vcf' : 'density' }
      units = { temperature: unitIn(first, TEMPERATURE_UNITS), value: unitIn(second, DENSITY_UNITS) }
    } else notRead.push(words.density.curve.notRead(at + 1, line.trim().slice(0, 60)))
  })
  if (points.length > MOST_POINTS) notRead.push(words.density.curve.tooMany(MOST_POINTS))
  if (points.length === 0) return { curve, points: 0, notRead }
  const { of } = curve
  const usual = curveUnits(of, base)
  const complete = (point: CurvePointForm): CurvePointForm => completedPoint({
    temperature: units.temperature === undefined ? point.temperature : withUnit(point.temperature, units.temperature),
    value: units.value === undefined || of === 'vcf' ? point.value : withUnit(point.value, units.value),
  }, usual)
  return { curve: withPoints(curve, points.slice(0, MOST_POINTS).map(complete)), points: points.length, notRead }
}

function cellsOf(line: string): readonly string[] {
  const plain = line.replace(/^\uFEFF/, '').trim()
  const mark = [/\t/, /;/, /,/, /\s{2,}/].find((one) => one.test(plain)) ?? /\s+(?=[-+.\d])/
  const cells = plain.split(mark).map((cell) => cell.trim().replace(/^"(.*)"$/, '$1').trim())
  while (cells.length > 2 && cells.at(-1) === '') cells.pop()
  return cells
}

function startsWithNumber(cell: string): boolean {
  return /^[-+\u2212]?[.\d]/.test(cell)
}

function unitIn(head: string, known: readonly (readonly [RegExp, string])[]): string | undefined {
  return known.find(([pattern]) => pattern.test(head))?.[1]
}
