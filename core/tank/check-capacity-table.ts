import { accepted, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { convertVolume, Decimal, inCalendar, parseVolume } from '../units/index.ts'
import { readTemperature } from '../volume-correction/index.ts'
import type { CapacityTable } from './tank.ts'

const NUMBER = /^\d{1,20}(?:\.\d{1,20})?$/
const DATE = /^(\d{4})-(\d{2})-(\d{2})$/

/**
 * Checks a capacity table: every number reads, levels rise strictly, volumes do not fall, the date is in the calendar,
 * the base temperature reads. All findings at once, each naming its row (from 1).
 * Refuses `capacity-table-line`, `capacity-table-not-increasing`, `capacity-table-incomplete`, `unreadable-value`, `out-of-range`.
 * @param table rows `[level mm, volume]` as decimal text, at least two
 * @param path of the table
 * @source MPMS-2.2A capacity table
 */
export function checkCapacityTable(table: CapacityTable, path: string): Outcome<CapacityTable> {
  const base = readTemperature(table.baseTemperature, `${path}.baseTemperature`)
  const findings = [...(base.ok ? [] : base.findings), ...checkDate(table.issuedOn, `${path}.issuedOn`), ...checkRows(table, path), ...checkHeel(table, `${path}.heel`)]
  return findings.length > 0 ? refused(...findings) : accepted(table)
}

function checkRows({ rows }: CapacityTable, path: string): readonly Finding[] {
  if (rows.length < 2) {
    return [{ code: 'capacity-table-incomplete', path: `${path}.rows`, value: `${rows.length}`, limit: 'rows: at least two are needed to interpolate', clause: 'MPMS-2.2A capacity table' }]
  }
  const findings: Finding[] = []
  let below: readonly [string, string] | undefined
  for (const [index, row] of rows.entries()) {
    const place = `${path}.rows.${index + 1}`
    if (!NUMBER.test(row[0]) || !NUMBER.test(row[1])) {
      findings.push({ code: 'capacity-table-line', path: place, value: row.join(', '), limit: 'a level in mm and a volume, both decimal numbers of zero or more', clause: 'HOUSE capacity table' })
      continue
    }
    if (below !== undefined) findings.push(...checkStep(below, row, place))
    below = row
  }
  return findings
}

/** The heel below the datum plate is within the table's volumes, so that no row can hold less. */
export function checkHeel({ heel, rows, volumeUnit }: Pick<CapacityTable, 'heel' | 'rows' | 'volumeUnit'>, path: string): readonly Finding[] {
  if (heel === undefined) return []
  const read = parseVolume(heel, path)
  if (!read.ok) return read.findings
  const first = rows[0]?.[1] ?? '0'
  if (read.value.value.isNegative() || (NUMBER.test(first) && convertVolume(read.value.value, read.value.unit, volumeUnit).gt(first))) {
    return [{ code: 'out-of-range', path, value: heel, limit: `0 to the volume of the first row, ${first} ${volumeUnit}, which includes it`, clause: 'MPMS-2.2A capacity table' }]
  }
  return []
}

/** Findings on a row that does not continue the one below it. */
export function checkStep(below: readonly [string, string], row: readonly [string, string], path: string): readonly Finding[] {
  const findings: Finding[] = []
  const finding = (value: string, limit: string): void => {
    findings.push({ code: 'capacity-table-not-increasing', path, value, limit, clause: 'MPMS-2.2A capacity table' })
  }
  if (!isLess(below[0], row[0])) finding(`level ${row[0]} mm`, `it must be above ${below[0]} mm`)
  if (isLess(row[1], below[1])) finding(`volume ${row[1]}`, `it must not be less than ${below[1]}`)
  return findings
}

/** a < b. Doubles decide where they differ, since reading a decimal keeps its order; decimals decide the rest. */
function isLess(a: string, b: string): boolean {
  const [x, y] = [Number(a), Number(b)]
  return x === y ? new Decimal(a).lt(b) : x < y
}

/** Findings on a date that is not in the calendar. */
export function checkDate(text: string, path: string): readonly Finding[] {
  const [, year = 0, month = 0, day = 0] = (DATE.exec(text) ?? []).map(Number)
  if (inCalendar(year, month, day)) return []
  return [{ code: 'unreadable-value', path, value: text, limit: 'a date of the calendar as 2024-02-11', clause: 'RFC-3339 5.6' }]
}
