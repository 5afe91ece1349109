import type { Finding } from '../refusal/index.ts'
import { Decimal, parseLength, millimetres, type LengthUnit } from '../units/index.ts'
import { badLine, readLevelCell, readVolumeCell, volumeLimit, volumeUnitNamed, type CellRules, type CsvRow } from './capacity-table-cells.ts'
import { fractionOfInch } from './capacity-table-lines.ts'

/** What a part of a step is worth, between two levels of the table: `7 mm, 0.550 m3, from 0 to 4 m`. */
export interface Part {
  readonly from: Decimal | undefined
  readonly to: Decimal | undefined
  readonly mm: Decimal
  readonly volume: Decimal
  readonly place: string
}

const HEADING = /^part\s*\((mm|cm|in)\)$/i
const ZONE = /^(?:from|to)\s*\((mm|cm|m|in|ft)\)$/i
const VOLUME = /^volume(?:\s*\(\s*([a-z0-9³]+)\s*\))?$/i

/** Whether a line begins a table of proportional parts. */
export function isPartsHeading({ cells }: CsvRow): boolean {
  return /^(?:part|from)\s*\(/i.test(cells[0] ?? '')
}

/**
 * Reads a table of proportional parts: `part (mm),volume (m3)` for the whole table, or `from (cm),to (cm),part (mm),volume (m3)`
 * for the levels of each zone. Parts rise with their volume.
 * Refuses `capacity-table-line`, `capacity-table-not-increasing`.
 */
export function readParts(lines: readonly CsvRow[], rules: CellRules, path: string): { readonly parts: readonly Part[]; readonly findings: readonly Finding[] } {
  const [heading, ...body] = lines
  if (heading === undefined) return { parts: [], findings: [] }
  const zoned = ZONE.test(heading.cells[0] ?? '')
  const [partCell = '', volumeCell = ''] = heading.cells.slice(zoned ? 2 : 0)
  const unit = HEADING.exec(partCell)?.[1]?.toLowerCase() as LengthUnit | undefined
  const volumeWord = VOLUME.exec(volumeCell)
  const zones = zoned ? heading.cells.slice(0, 2).map((cell) => ZONE.exec(cell)?.[1]?.toLowerCase() as LengthUnit | undefined) : []
  if (unit === undefined || volumeWord === null || zones.includes(undefined)) {
    return { parts: [], findings: [badLine(heading, `${path} line ${heading.line}`, 'a heading as part (mm),volume (m3) or from (cm),to (cm),part (mm),volume (m3)')] }
  }
  if (volumeWord[1] !== undefined && volumeUnitNamed(volumeWord[1]) !== rules.volume) {
    return { parts: [], findings: [badLine(heading, `${path} line ${heading.line}`, `the volume unit of the table, ${rules.volume ?? 'stated above'}`)] }
  }
  const findings: Finding[] = []
  const parts: Part[] = []
  for (const row of body) {
    const place = `${path} line ${row.line}`
    const read = readPart(row, { rules, unit, zones, place })
    if ('code' in read) { findings.push(read); continue }
    findings.push(...continues(parts.at(-1), read))
    parts.push(read)
  }
  return { parts, findings }
}

interface PartRules { readonly rules: CellRules; readonly unit: LengthUnit; readonly zones: readonly (LengthUnit | undefined)[]; readonly place: string }

function readPart(row: CsvRow, { rules, unit, zones, place }: PartRules): Part | Finding {
  const [from, to] = zones.map((zone, i) => readLevelCell(row.cells[i] ?? '', { ...rules, level: zone }, undefined))
  const [partCell = '', volumeCell = '', ...more] = row.cells.slice(zones.length)
  const volume = readVolumeCell(volumeCell, rules)
  const mm = partOf(partCell, unit)
  if (from?.ok === false || to?.ok === false) return badLine(row, place, 'the levels between which the part holds')
  if (mm === undefined || mm.isZero() || more.some((cell) => cell !== '')) return badLine(row, place, `a part of a step in ${unit}, and its volume`)
  if (volume === undefined) return badLine(row, place, volumeLimit(volumeCell, rules))
  const zone = (one: typeof from): Decimal | undefined => (one?.ok === true ? new Decimal(one.mm) : undefined)
  const part = { from: zone(from), to: zone(to), mm, volume: new Decimal(volume), place }
  return part.from !== undefined && part.to !== undefined && !part.from.lt(part.to) ? badLine(row, place, 'a zone that ends above its beginning') : part
}

function partOf(cell: string, unit: LengthUnit): Decimal | undefined {
  const fraction = unit === 'in' ? fractionOfInch(cell) : undefined
  if (fraction !== undefined) return fraction.times('25.4')
  const read = parseLength(`${cell} ${unit}`, '')
  return read.ok && !read.value.value.isNegative() ? millimetres(read.value) : undefined
}

/** Parts of one zone rise; a new zone begins where the one before ended, or later. */
function continues(before: Part | undefined, part: Part): readonly Finding[] {
  if (before === undefined) return []
  const finding = (value: string, limit: string): Finding => ({ code: 'capacity-table-not-increasing', path: part.place, value, limit, clause: 'MPMS-2.2A capacity table' })
  const sameZone = (before.from === undefined && part.from === undefined) || (part.from !== undefined && before.from?.eq(part.from) === true)
  if (!sameZone) return part.from !== undefined && before.to?.gt(part.from) === true ? [finding(`a zone from ${part.from.toFixed()} mm`, `it must not begin below ${before.to.toFixed()} mm, where the zone before it ends`)] : []
  return [
    ...(part.mm.gt(before.mm) ? [] : [finding(`part ${part.mm.toFixed()} mm`, `it must be above ${before.mm.toFixed()} mm`)]),
    ...(part.volume.gte(before.volume) ? [] : [finding(`volume ${part.volume.toFixed()}`, `it must not be less than ${before.volume.toFixed()}`)]),
  ]
}

/**
 * The table with its proportional parts written out: at each level L of a zone, L + p with V(L) + v(p), below the next level.
 * A part that reaches past the next line is refused, once per part.
 * @param rows levels [mm] and volumes of the main table
 */
export function withParts(rows: readonly (readonly [string, string])[], parts: readonly Part[]): { readonly rows: readonly [string, string][]; readonly findings: readonly Finding[] } {
  const out: [string, string][] = []
  const past = new Map<string, Finding>()
  for (const [i, [mm, volume]] of rows.entries()) {
    out.push([mm, volume])
    const next = rows[i + 1]
    if (next === undefined) continue
    const level = new Decimal(mm)
    for (const part of parts.filter((one) => (one.from === undefined || level.gte(one.from)) && (one.to === undefined || level.lt(one.to)))) {
      const at = level.plus(part.mm)
      if (at.gte(next[0])) continue
      const here = part.volume.plus(volume)
      if (here.gt(next[1]) && !past.has(part.place)) {
        past.set(part.place, { code: 'capacity-table-not-increasing', path: part.place, value: `part ${part.mm.toFixed()} mm, ${part.volume.toFixed()}`, limit: `at ${mm} mm it would pass the next line, ${next[0]} mm with ${next[1]}`, clause: 'MPMS-2.2A capacity table' })
      }
      out.push([at.toFixed(), here.toFixed()])
    }
  }
  return { rows: out, findings: [...past.values()] }
}
