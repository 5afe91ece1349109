import type { Finding } from '../refusal/index.ts'
import { parseVolume } from '../units/index.ts'
import { readTemperature } from '../volume-correction/index.ts'
import { badLine, DECIMAL_MARKS, volumeUnitNamed, withPoint, type CsvRow, type DecimalMark } from './capacity-table-cells.ts'
import { checkDate } from './check-capacity-table.ts'
import { TANK_BOTTOMS } from './tank.ts'

/** The lines that stand above the table. */
export const HEADER_NAMES = ['certificate', 'issued-by', 'issued-on', 'tank', 'base-temperature', 'volume-unit', 'revision', 'bottom', 'heel', 'decimal-mark', 'first-volume'] as const
/** One of {@link HEADER_NAMES}. */
export type HeaderName = (typeof HEADER_NAMES)[number]

/** Those without which there is no table; the unit of the volumes may stand in the heading instead, and is looked at there. */
const NEEDED: readonly HeaderName[] = ['certificate', 'issued-by', 'issued-on', 'tank', 'base-temperature']
const MOST_CHARACTERS = 80

/** What stands above a table, and the decimal mark by which its figures are read. */
export interface Header { readonly values: ReadonlyMap<HeaderName, string>; readonly mark: DecimalMark; readonly findings: readonly Finding[] }

/**
 * Reads the lines above the table: each name once, with one value of at most 80 characters. Figures in them have the
 * decimal mark of the file.
 * @param chosen the decimal mark, where the person said it
 */
export function readHeader(rows: readonly CsvRow[], path: string, chosen?: DecimalMark): Header {
  const values = new Map<HeaderName, string>()
  const stated = rows.find(({ cells }) => cells[0]?.trim().toLowerCase() === 'decimal-mark')?.cells[1]?.trim().toLowerCase()
  const mark = chosen ?? DECIMAL_MARKS.find((known) => known === stated) ?? 'point'
  const findings: Finding[] = []
  for (const row of rows) {
    const place = `${path} line ${row.line}`
    const name = HEADER_NAMES.find((known) => known === row.cells[0]?.trim().toLowerCase())
    const written = row.cells[1]?.trim() ?? ''
    const value = name === 'heel' || name === 'base-temperature' ? withPoint(written, mark) ?? written : written
    const limit = lineLimit(name, value, row.cells, values)
    if (name === undefined || limit !== undefined) {
      findings.push(badLine(row, place, limit ?? ''))
      if (name === undefined) continue
    } else findings.push(...checkHeaderValue(name, value, place))
    values.set(name, value)
  }
  for (const name of NEEDED.filter((known) => !values.has(known))) {
    findings.push({ code: 'capacity-table-incomplete', path, value: '', limit: `the line “${name},…” above the rows`, clause: 'HOUSE capacity table' })
  }
  return { values, mark, findings }
}

/** What should stand in the line, or undefined where it is in order. */
function lineLimit(name: HeaderName | undefined, value: string, cells: readonly string[], values: ReadonlyMap<HeaderName, string>): string | undefined {
  if (name === undefined) return `one of the lines ${HEADER_NAMES.join(', ')}, or the heading level,volume`
  if (values.has(name)) return `“${name}” once only`
  if (cells.slice(2).some((cell) => cell !== '')) return `“${name},value”, a value with a comma in quotation marks`
  if (value.length < 1 || value.length > MOST_CHARACTERS) return `“${name},value” with 1 to ${MOST_CHARACTERS} characters`
  switch (name) {
    case 'volume-unit': return volumeUnitNamed(value) === undefined ? 'a volume unit out of m3, L, bbl, gal' : undefined
    case 'bottom': return TANK_BOTTOMS.some((known) => known === bottomWord(value)) ? undefined : `a bottom out of ${TANK_BOTTOMS.join(', ')}`
    case 'decimal-mark': return DECIMAL_MARKS.some((known) => known === value.toLowerCase()) ? undefined : 'point or comma'
    case 'revision': return value.length > 20 ? 'a revision of at most 20 characters' : undefined
    default: return undefined
  }
}

/** `cone up`, `Cone-up` and the like as the word we keep. */
export function bottomWord(value: string): string {
  return value.trim().toLowerCase().replace(/\s+/g, '-')
}

function checkHeaderValue(name: HeaderName, value: string, path: string): readonly Finding[] {
  if (name === 'issued-on') return checkDate(value, path)
  const read = name === 'base-temperature' ? readTemperature(value, path) : name === 'heel' ? parseVolume(value, path) : undefined
  return read === undefined || read.ok ? [] : read.findings
}
