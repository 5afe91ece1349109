import { refused, accepted, type Finding, type Outcome } from '../refusal/index.ts'
import { parseVolume, plainText, type LengthUnit, type VolumeUnit } from '../units/index.ts'
import { readHeading, readLevelCell, type CsvRow, type TableHeading } from './capacity-table-cells.ts'
import { readHeader, type HeaderName } from './capacity-table-header.ts'
import { checkStep } from './check-capacity-table.ts'
import type { CapacityTable } from './tank.ts'

/** A table as read, and the tank code its certificate names. */
export interface ReadTable { readonly tank: string; readonly table: CapacityTable }

/** After so many bad lines the rest is not read: the file is of another kind. */
const MOST_BAD_LINES = 50
const MOST_ROWS = 100_000
const BARE = /^\d{1,20}(?:\.\d{1,20})?$/

/**
 * Reads the rows of a calibration company's table: lines `certificate,…` `issued-by,…` `issued-on,…` `tank,…`
 * `base-temperature,…` `volume-unit,…` in any order, then a heading `level,volume` or `level (mm),volume (m3)`, then rows.
 * All findings at once, up to fifty bad lines, each naming its line.
 * Refuses `capacity-table-line`, `capacity-table-not-increasing`, `capacity-table-incomplete`, `unreadable-value`, `out-of-range`.
 * @param rows lines with their numbers, cells trimmed, blank lines left out
 * @param path of the file, `file`
 * @source MPMS-2.2A capacity table
 */
export function capacityTableFromCsvRows(rows: readonly CsvRow[], path = 'file'): Outcome<ReadTable> {
  const at = rows.findIndex(({ cells }) => /^level\b/i.test(cells[0] ?? ''))
  const headerRows = at < 0 ? rows : rows.slice(0, at)
  const header = readHeader(headerRows, path)
  const heading = rows[at]
  if (heading === undefined) {
    const missing: Finding = { code: 'capacity-table-incomplete', path, value: '', limit: 'the heading “level (mm),volume (m3)” and the rows below it', clause: 'HOUSE capacity table' }
    return refused(...header.findings, missing)
  }
  const columns = readHeading(heading, header.values.get('volume-unit'), path)
  const body = readBody(rows.slice(at + 1), columns.value, path)
  const findings = [...header.findings, ...columns.findings, ...body.findings]
  const volumeUnit = columns.value.volume
  if (findings.length > 0 || volumeUnit === undefined) return refused(...findings)
  const text = (name: HeaderName): string => header.values.get(name) ?? ''
  return accepted({
    tank: text('tank'),
    table: {
      certificate: text('certificate'), issuedBy: text('issued-by'), issuedOn: text('issued-on'),
      baseTemperature: text('base-temperature'), volumeUnit, levelUnit: body.levelUnit, rows: [...body.rows],
    },
  })
}

interface Body { readonly rows: readonly [string, string][]; readonly levelUnit: LengthUnit; readonly findings: readonly Finding[] }

function readBody(lines: readonly CsvRow[], heading: TableHeading, path: string): Body {
  const rows: [string, string][] = []
  const findings: Finding[] = []
  let levelUnit: LengthUnit | undefined
  let bad = 0
  for (const row of lines) {
    const place = `${path} line ${row.line}`
    const read = readRow(row, heading, levelUnit, place)
    const below = rows.at(-1)
    const found = read.ok ? (below === undefined ? [] : checkStep(below, read.value.row, place)) : read.findings
    findings.push(...found)
    if (read.ok) {
      rows.push(read.value.row)
      levelUnit = levelUnit === 'ft-in' ? levelUnit : read.value.unit
    }
    if (found.length > 0) bad += 1
    if (bad < MOST_BAD_LINES) continue
    findings.push({ code: 'capacity-table-line', path: place, value: row.cells.join(','), limit: `rows as 1200,241.318; after ${MOST_BAD_LINES} bad lines the rest was not read`, clause: 'HOUSE capacity table' })
    break
  }
  if (findings.length === 0 && rows.length < 2) findings.push({ code: 'capacity-table-incomplete', path, value: `${rows.length}`, limit: 'rows: at least two are needed to interpolate', clause: 'MPMS-2.2A capacity table' })
  if (rows.length > MOST_ROWS) findings.push({ code: 'out-of-range', path, value: `${rows.length} rows`, limit: `${MOST_ROWS} rows`, clause: 'HOUSE capacity table' })
  return { rows, levelUnit: levelUnit ?? 'mm', findings }
}

function readRow(row: CsvRow, heading: TableHeading, before: LengthUnit | undefined, path: string): Outcome<{ row: [string, string]; unit: LengthUnit }> {
  const [levelCell = '', volumeCell = '', ...more] = row.cells
  const line = (limit: string): Outcome<never> => refused({ code: 'capacity-table-line', path, value: row.cells.join(','), limit, clause: 'HOUSE capacity table' })
  if (more.some((cell) => cell !== '')) return line('one level and one volume')
  const level = readLevelCell(levelCell, heading.level, before)
  if (!level.ok) return line(level.limit)
  const volume = readVolumeCell(volumeCell, heading.volume)
  if (volume === undefined) return line(`a volume of zero or more as 241.318${heading.volume === undefined ? '' : `, in ${heading.volume}`}`)
  return accepted({ row: [level.mm, volume], unit: level.unit })
}

/** The digits of a volume as written; undefined where it is none, or in another unit than the table. */
function readVolumeCell(cell: string, unit: VolumeUnit | undefined): string | undefined {
  const plain = plainText(cell)
  if (BARE.test(plain)) return plain
  const read = parseVolume(cell, '')
  const digits = /^[\d.]+/.exec(plain)?.[0] ?? ''
  return read.ok && read.value.unit === unit && BARE.test(digits) ? digits : undefined
}

