import { accepted, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { parsePercent, type LengthUnit } from '../units/index.ts'
import { exceptionFrom } from '../worksheet/index.ts'
import { type CellRules, type CsvRow, type DecimalMark } from './capacity-table-cells.ts'
import { readBody } from './capacity-table-body.ts'
import { bottomWord, readHeader, type HeaderName } from './capacity-table-header.ts'
import { isHeading, readHeading } from './capacity-table-heading.ts'
import { isPartsHeading, readParts, withParts } from './capacity-table-parts.ts'
import { checkHeel } from './check-capacity-table.ts'
import { jumpFinding, tableJumps, USUAL_JUMP_SHARE } from './table-jumps.ts'
import { TANK_BOTTOMS, type CapacityTable, type TableLayout } from './tank.ts'

/** A table as read, and the tank code its certificate names. */
export interface ReadTable { readonly tank: string; readonly table: CapacityTable }

/** How a file is to be read; what is left out is taken from the file itself. */
export interface TableReadingRules {
  /** The layout that is expected; another one is refused. */
  readonly layout?: TableLayout | undefined
  readonly decimalMark?: DecimalMark | undefined
  /** By how much a step may differ from those beside it, and what happens where it does. */
  readonly jumps?: { readonly share: string; readonly then: 'warn' | 'refuse' } | undefined
}

/** So many odd steps are named; a table with more is of another kind. */
const MOST_NOTICED = 50
const USUAL_JUMPS = { share: USUAL_JUMP_SHARE, then: 'warn' } as const

/**
 * Reads the rows of a calibration company's table: lines `certificate,…` `issued-by,…` `issued-on,…` `tank,…`
 * `base-temperature,…` `volume-unit,…`, and where the certificate says so `revision,…` `bottom,…` `heel,…` `decimal-mark,…`
 * `first-volume,…`, in any order; then a heading and rows in one of the layouts of {@link readHeading}; then perhaps a
 * table of proportional parts. All findings at once, up to fifty bad lines, each naming its line. Steps that stand out
 * from those beside them are kept in `noticed`, or refused where the rules say so.
 * Refuses `capacity-table-line`, `capacity-table-not-increasing`, `capacity-table-increment`, `capacity-table-incomplete`,
 * `capacity-table-jump`, `unreadable-value`, `out-of-range`.
 * @param rows lines with their numbers, cells trimmed, blank lines left out
 * @param path of the file, `file`
 * @param how layout, decimal mark and jumps, where they are not left to the file
 * @source MPMS-2.2A capacity table
 */
export function capacityTableFromCsvRows(rows: readonly CsvRow[], path = 'file', how: TableReadingRules = {}): Outcome<ReadTable> {
  const share = parsePercent((how.jumps ?? USUAL_JUMPS).share, 'jumps.share')
  if (!share.ok) return share
  if (!share.value.value.isPositive() || share.value.value.isZero()) return refused({ code: 'out-of-range', path: 'jumps.share', value: share.value.text, limit: 'more than 0 %', clause: 'HOUSE capacity table' })
  const at = rows.findIndex(isHeading)
  const header = readHeader(at < 0 ? rows : rows.slice(0, at), path, how.decimalMark)
  const heading = rows[at]
  if (heading === undefined) {
    const missing: Finding = { code: 'capacity-table-incomplete', path, value: '', limit: 'the heading “level (mm),volume (m3)” and the rows below it', clause: 'HOUSE capacity table' }
    return refused(...header.findings, missing)
  }
  const text = (name: HeaderName): string => header.values.get(name) ?? ''
  const { value: { columns, level, volume }, findings: inHeading } = readHeading(heading, header.values.get('volume-unit'), path)
  const rules: CellRules = { level, volume, mark: header.mark }
  const below = rows.slice(at + 1)
  const partsAt = below.findIndex(isPartsHeading)
  const body = readBody(partsAt < 0 ? below : below.slice(0, partsAt), columns, rules, header.values.get('first-volume'), path)
  const parts = readParts(partsAt < 0 ? [] : below.slice(partsAt), rules, path)
  const layout: TableLayout = partsAt >= 0 ? 'parts' : columns.kind === 'rows' && columns.increment !== undefined ? 'increments' : columns.kind
  const findings = [...header.findings, ...inHeading, ...otherLayout(layout, how.layout, heading, path), ...body.findings, ...parts.findings]
  if (findings.length > 0 || volume === undefined) return refused(...findings)
  const written = withParts(body.rows, parts.parts)
  const jumps = tableJumps(body.rows, share.value.value.toNumber() / 100).slice(0, MOST_NOTICED).map((jump) => jumpFinding(jump, share.value.text, volume, body.places[jump.row] ?? path))
  const odd = how.jumps?.then === 'refuse' ? jumps : []
  const heel = checkHeel({ heel: header.values.get('heel'), rows: [...written.rows], volumeUnit: volume }, `${path} heel`)
  if (written.findings.length + odd.length + heel.length > 0) return refused(...written.findings, ...odd, ...heel)
  const bottom = TANK_BOTTOMS.find((known) => known === bottomWord(text('bottom')))
  return accepted({
    tank: text('tank'),
    table: {
      certificate: text('certificate'), issuedBy: text('issued-by'), issuedOn: text('issued-on'),
      baseTemperature: text('base-temperature'), volumeUnit: volume, levelUnit: levelUnitOf(body.levelUnit), rows: [...written.rows],
      ...(header.values.has('revision') ? { revision: text('revision') } : {}), ...(bottom === undefined ? {} : { bottom }),
      ...(header.values.has('heel') ? { heel: text('heel') } : {}), ...(layout === 'rows' ? {} : { layout }),
      ...(jumps.length === 0 ? {} : { noticed: jumps.map(exceptionFrom) }),
    },
  })
}

function levelUnitOf(unit: LengthUnit | undefined): LengthUnit {
  return unit ?? 'mm'
}

function otherLayout(found: TableLayout, expected: TableLayout | undefined, heading: CsvRow, path: string): readonly Finding[] {
  if (expected === undefined || expected === found) return []
  return [{ code: 'capacity-table-line', path: `${path} line ${heading.line}`, value: heading.cells.join(','), limit: `a file of the layout “${expected}”; this one has “${found}”`, clause: 'HOUSE capacity table' }]
}
