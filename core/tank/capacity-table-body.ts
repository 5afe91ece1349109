import type { Finding } from '../refusal/index.ts'
import { Decimal, type LengthUnit } from '../units/index.ts'
import { badLine, readVolumeCell, volumeLimit, type CellRules, type CsvRow } from './capacity-table-cells.ts'
import type { Columns, Increment } from './capacity-table-heading.ts'
import { readEntries, type Entry } from './capacity-table-lines.ts'
import { checkStep } from './check-capacity-table.ts'

/** The rows of a table, where each stood in the file, and what is wrong with them. */
export interface TableBody {
  readonly rows: readonly [string, string][]
  readonly places: readonly string[]
  readonly levelUnit: LengthUnit | undefined
  readonly findings: readonly Finding[]
}

/** After so many bad lines the rest is not read: the file is of another kind. */
const MOST_BAD_LINES = 50
const MOST_ROWS = 100_000

/**
 * Reads the lines below the heading: each by its layout, each against the one below it. Increments are added up from the
 * first volume, or checked against the volumes beside them to one unit of the last printed digit.
 * @param firstVolume the line `first-volume`, which a table of increments needs
 */
export function readBody(lines: readonly CsvRow[], columns: Columns, rules: CellRules, firstVolume: string | undefined, path: string): TableBody {
  const rows: [string, string][] = []
  const places: string[] = []
  const findings: Finding[] = []
  let levelUnit: LengthUnit | undefined
  let before: Entry | undefined
  let bad = 0
  const first = columns.kind === 'increments' ? startOf(firstVolume, rules, path) : undefined
  if (first !== undefined && 'code' in first) findings.push(first)
  for (const [i, row] of lines.entries()) {
    const place = `${path} line ${row.line}`
    const read = readEntries(row, columns, rules, levelUnit, i === lines.length - 1, place)
    const found: Finding[] = read.ok ? [] : [...read.findings]
    for (const entry of read.ok ? read.value : []) {
      const below = rows.at(-1)
      const volume = entry.volume ?? addedUp(below, before, entry, columns, first !== undefined && 'digits' in first ? first.digits : '0')
      const next: [string, string] = [entry.mm, volume]
      if (below !== undefined) found.push(...checkStep(below, next, entry.place), ...increments(below, before, next, columns))
      rows.push(next)
      places.push(entry.place)
      levelUnit = levelUnit === 'ft-in' ? levelUnit : entry.unit
      before = entry
    }
    findings.push(...found)
    if (found.length > 0) bad += 1
    if (bad < MOST_BAD_LINES) continue
    findings.push(badLine(row, place, `rows as 1200,241.318; after ${MOST_BAD_LINES} bad lines the rest was not read`))
    break
  }
  if (findings.length === 0 && rows.length < 2) findings.push({ code: 'capacity-table-incomplete', path, value: `${rows.length}`, limit: 'rows: at least two are needed to interpolate', clause: 'MPMS-2.2A capacity table' })
  if (rows.length > MOST_ROWS) findings.push({ code: 'out-of-range', path, value: `${rows.length} rows`, limit: `${MOST_ROWS} rows`, clause: 'HOUSE capacity table' })
  return { rows, places, levelUnit, findings }
}

function startOf(firstVolume: string | undefined, rules: CellRules, path: string): { readonly digits: string } | Finding {
  if (firstVolume === undefined) return { code: 'capacity-table-incomplete', path, value: '', limit: 'the volume at its first level, as a line “first-volume,12.000”', clause: 'HOUSE capacity table' }
  const digits = readVolumeCell(firstVolume, rules)
  return digits === undefined ? { code: 'capacity-table-line', path: `${path} first-volume`, value: firstVolume, limit: volumeLimit(firstVolume, rules), clause: 'HOUSE capacity table' } : { digits }
}

/** The volume at an entry: that of the entry below and its increment. */
function addedUp(below: readonly [string, string] | undefined, before: Entry | undefined, entry: Entry, columns: Columns, first: string): string {
  if (below === undefined || columns.kind !== 'increments') return first
  return new Decimal(below[1]).plus(risen(below[0], entry.mm, before?.increment ?? '0', columns.increment)).toFixed()
}

function risen(from: string, to: string, increment: string, { per }: Increment): Decimal {
  return per === undefined ? new Decimal(increment) : new Decimal(increment).times(new Decimal(to).minus(from)).div(per)
}

/** Findings on an increment that does not lead from its volume to the next. */
function increments(below: readonly [string, string], before: Entry | undefined, next: readonly [string, string], columns: Columns): readonly Finding[] {
  if (columns.kind !== 'rows' || columns.increment === undefined || before?.increment === undefined) return []
  const led = risen(below[0], next[0], before.increment, columns.increment)
  const risenBy = new Decimal(next[1]).minus(below[1])
  const decimals = Math.max(decimalsOf(below[1]), decimalsOf(next[1]))
  const steps = columns.increment.per === undefined ? 1 : new Decimal(next[0]).minus(below[0]).div(columns.increment.per).toNumber()
  const allowed = new Decimal(10).pow(-decimals).plus(columns.increment.per === undefined ? new Decimal(10).pow(-decimalsOf(before.increment)) : new Decimal(10).pow(-decimalsOf(before.increment)).times(steps))
  if (led.minus(risenBy).abs().lte(allowed)) return []
  return [{ code: 'capacity-table-increment', path: before.place, value: before.increment, limit: `the volumes rise by ${risenBy.toFixed()} from ${below[0]} mm to ${next[0]} mm`, clause: 'MPMS-2.2A capacity table' }]
}

function decimalsOf(digits: string): number {
  return digits.split('.')[1]?.length ?? 0
}
