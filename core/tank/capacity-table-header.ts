import type { Finding } from '../refusal/index.ts'
import { volumeUnitNamed, type CsvRow } from './capacity-table-cells.ts'
import { checkDate } from './check-capacity-table.ts'
import { readTemperature } from '../volume-correction/index.ts'

/** The lines that stand above the table. */
export const HEADER_NAMES = ['certificate', 'issued-by', 'issued-on', 'tank', 'base-temperature', 'volume-unit'] as const
/** One of {@link HEADER_NAMES}. */
export type HeaderName = (typeof HEADER_NAMES)[number]

const MOST_CHARACTERS = 80

/** Reads the lines above the table: each name once, with one value of at most 80 characters. */
export function readHeader(rows: readonly CsvRow[], path: string): { readonly values: ReadonlyMap<HeaderName, string>; readonly findings: readonly Finding[] } {
  const values = new Map<HeaderName, string>()
  const findings: Finding[] = []
  for (const { line, cells } of rows) {
    const place = `${path} line ${line}`
    const name = HEADER_NAMES.find((known) => known === cells[0]?.trim().toLowerCase())
    const value = cells[1]?.trim() ?? ''
    const limit = lineLimit(name, value, cells, values)
    if (name === undefined || limit !== undefined) {
      findings.push({ code: 'capacity-table-line', path: place, value: cells.join(','), limit: limit ?? '', clause: 'HOUSE capacity table' })
      if (name === undefined) continue
    } else findings.push(...checkHeaderValue(name, value, place))
    values.set(name, value)
  }
  // the unit of the volumes may stand in the heading instead; that is looked at there
  for (const name of HEADER_NAMES.filter((known) => known !== 'volume-unit' && !values.has(known))) {
    findings.push({ code: 'capacity-table-incomplete', path, value: '', limit: `the line “${name},…” above the rows`, clause: 'HOUSE capacity table' })
  }
  return { values, findings }
}

/** What should stand in the line, or undefined where it is in order. */
function lineLimit(name: HeaderName | undefined, value: string, cells: readonly string[], values: ReadonlyMap<HeaderName, string>): string | undefined {
  if (name === undefined) return `one of the lines ${HEADER_NAMES.join(', ')}, or the heading level,volume`
  if (values.has(name)) return `“${name}” once only`
  if (cells.slice(2).some((cell) => cell !== '')) return `“${name},value”, a value with a comma in quotation marks`
  if (value.length < 1 || value.length > MOST_CHARACTERS) return `“${name},value” with 1 to ${MOST_CHARACTERS} characters`
  if (name === 'volume-unit' && volumeUnitNamed(value) === undefined) return 'a volume unit out of m3, L, bbl, gal'
  return undefined
}

function checkHeaderValue(name: HeaderName, value: string, path: string): readonly Finding[] {
  if (name === 'issued-on') return checkDate(value, path)
  if (name !== 'base-temperature') return []
  const read = readTemperature(value, path)
  return read.ok ? [] : read.findings
}
