import type { Finding } from '../refusal/index.ts'
import { millimetres, parseLength, VOLUME_UNITS, type LengthUnit, type VolumeUnit } from '../units/index.ts'

/** A line of the file: its number, from 1, and its cells. */
export interface CsvRow { readonly line: number; readonly cells: readonly string[] }

/** What the heading says of its two columns; a unit is absent where the cells carry it, or the header line does. */
export interface TableHeading { readonly level: LengthUnit | undefined; readonly volume: VolumeUnit | undefined }

const LEVEL = /^level(?:\s*[([]\s*([a-z-]+)\s*[)\]])?$/i
const VOLUME = /^volume(?:\s*[([]\s*([a-z0-9³]+)\s*[)\]])?$/i
const LEVEL_UNITS = ['m', 'cm', 'mm', 'in', 'ft', 'ft-in'] as const
const BARE = /^\d{1,20}(?:\.\d{1,20})?$/
const FEET = new Set<LengthUnit>(['ft', 'in', 'ft-in'])

/** Reads `level,volume` or `level (mm),volume (m3)`; the volume unit must stand here or in the line `volume-unit`, not two of them. */
export function readHeading(row: CsvRow, volumeUnitLine: string | undefined, path: string): { readonly value: TableHeading; readonly findings: readonly Finding[] } {
  const findings: Finding[] = []
  const place = `${path} line ${row.line}`
  const bad = (limit: string): void => {
    findings.push({ code: 'capacity-table-line', path: place, value: row.cells.join(','), limit, clause: 'HOUSE capacity table' })
  }
  const [first = '', second = ''] = row.cells
  const levelMatch = LEVEL.exec(first)
  const volumeMatch = VOLUME.exec(second)
  if (!levelMatch || !volumeMatch) bad('a heading as level,volume or level (mm),volume (m3)')
  const level = LEVEL_UNITS.find((unit) => unit === levelMatch?.[1]?.toLowerCase())
  if (levelMatch?.[1] !== undefined && level === undefined) bad(`a level unit out of ${LEVEL_UNITS.join(', ')}`)
  const inHeading = volumeUnitNamed(volumeMatch?.[1])
  if (volumeMatch?.[1] !== undefined && inHeading === undefined) bad(`a volume unit out of ${VOLUME_UNITS.join(', ')}`)
  const inLine = volumeUnitNamed(volumeUnitLine)
  if (inHeading !== undefined && inLine !== undefined && inHeading !== inLine) bad(`the unit of the line volume-unit, ${inLine}`)
  if (inHeading === undefined && volumeUnitLine === undefined && volumeMatch?.[1] === undefined) {
    findings.push({ code: 'capacity-table-incomplete', path, value: '', limit: 'the unit of its volumes, as a line “volume-unit,m3” or in the heading “volume (m3)”', clause: 'HOUSE capacity table' })
  }
  return { value: { level, volume: inHeading ?? inLine }, findings }
}

/** A volume unit by its word, in any case; undefined for anything else. */
export function volumeUnitNamed(word: string | undefined): VolumeUnit | undefined {
  const wanted = word?.trim().toLowerCase().replace('³', '3')
  return VOLUME_UNITS.find((unit) => unit.toLowerCase() === wanted)
}

/** A level cell in millimetres, exact, with the unit it was written in; or what should stand there. */
export type LevelCell = { readonly ok: true; readonly mm: string; readonly unit: LengthUnit } | { readonly ok: false; readonly limit: string }

/** Reads `1200` under a heading with a unit, or `1200 mm`, `3 ft 11 1/4 in` with its own. */
export function readLevelCell(cell: string, headed: LengthUnit | undefined, before: LengthUnit | undefined): LevelCell {
  const bare = BARE.test(cell.trim())
  if (bare && (headed === undefined || headed === 'ft-in')) return { ok: false, limit: 'a level with its unit as 1200 mm or 3 ft 11 1/4 in, or a heading level (mm)' }
  const read = parseLength(bare ? `${cell} ${headed}` : cell, '')
  if (!read.ok || read.value.value.isNegative()) return { ok: false, limit: 'a level of zero or more as 1200 mm, 1.2 m or 3 ft 11 1/4 in' }
  const { unit } = read.value
  const wanted = headed ?? before
  if (wanted !== undefined && !sameFamily(unit, wanted)) return { ok: false, limit: `a level in ${wanted}, like the rest of the table` }
  return { ok: true, mm: millimetres(read.value).toFixed(), unit }
}

/** Feet, inches and both together may stand in one table; metric units may not be mixed. */
function sameFamily(a: LengthUnit, b: LengthUnit): boolean {
  return a === b || (FEET.has(a) && FEET.has(b))
}
