import type { Finding } from '../refusal/index.ts'
import { millimetres, parseLength, VOLUME_UNITS, type Decimal, type LengthUnit, type VolumeUnit } from '../units/index.ts'
import { badLine, volumeUnitNamed, type CsvRow } from './capacity-table-cells.ts'

/** What the columns of a table are, as its heading says. */
export type Columns =
  /** Level and volume, and perhaps the volume up to the next line, which is then checked. */
  | { readonly kind: 'rows'; readonly increment: Increment | undefined }
  /** Level and the volume up to the next line; the volume at the first level stands above. */
  | { readonly kind: 'increments'; readonly increment: Increment }
  /** A level, and a volume for each length that a column adds to it [mm]. */
  | { readonly kind: 'grid'; readonly offsets: readonly Decimal[] }
  /** Feet, inches, perhaps a fraction of an inch, and the volume. */
  | { readonly kind: 'feet-inches'; readonly fraction: boolean }

/** An increment: a volume per step up to the next line, or per a length [mm]. */
export interface Increment { readonly per: Decimal | undefined }

/** The heading of a table. */
export interface Heading { readonly columns: Columns; readonly level: LengthUnit | undefined; readonly volume: VolumeUnit | undefined }

const UNIT = String.raw`(?:\s*[([]\s*([a-z0-9³-]+)\s*[)\]])?`
const LEVEL = new RegExp(`^level${UNIT}$`, 'i')
const VOLUME = new RegExp(`^volume${UNIT}$`, 'i')
const INCREMENT = /^increment(?:\s*[([]\s*([a-z0-9³]+)(?:\s*(?:\/|per)\s*(mm|cm|m|in|ft))?\s*[)\]])?$/i
const LEVEL_UNITS = ['m', 'cm', 'mm', 'in', 'ft', 'ft-in'] as const

/** Whether a line begins a table. */
export function isHeading({ cells }: CsvRow): boolean {
  return /^(?:level\b|feet$|ft$)/i.test(cells[0] ?? '')
}

/**
 * Reads the heading of a table and recognises its layout: `level,volume`, `level (mm),increment (m3)`,
 * `level (cm),0 mm,1 mm,…`, `feet,inches,fraction,volume (bbl)`. The volume unit must stand here or in the line `volume-unit`.
 */
export function readHeading(row: CsvRow, volumeUnitLine: string | undefined, path: string): { readonly value: Heading; readonly findings: readonly Finding[] } {
  const findings: Finding[] = []
  const bad = (limit: string): void => { findings.push(badLine(row, `${path} line ${row.line}`, limit)) }
  const cells = trimmedEnd(row.cells)
  const columns = columnsOf(cells)
  if (columns === undefined) bad('a heading as level,volume or level (mm),volume (m3)')
  const levelWord = LEVEL.exec(cells[0] ?? '')?.[1]
  const level = columns?.kind === 'feet-inches' ? 'ft-in' : LEVEL_UNITS.find((unit) => unit === levelWord?.toLowerCase())
  if (levelWord !== undefined && level === undefined) bad(`a level unit out of ${LEVEL_UNITS.join(', ')}`)
  const volumeWords = cells.flatMap((cell) => (VOLUME.exec(cell) ?? INCREMENT.exec(cell))?.[1] ?? [])
  const units = volumeWords.map(volumeUnitNamed)
  if (units.includes(undefined)) bad(`a volume unit out of ${VOLUME_UNITS.join(', ')}`)
  if (new Set(units).size > 1) bad('one volume unit for all columns')
  const inHeading = units[0]
  const inLine = volumeUnitNamed(volumeUnitLine)
  if (inHeading !== undefined && inLine !== undefined && inHeading !== inLine) bad(`the unit of the line volume-unit, ${inLine}`)
  if (columns !== undefined && volumeUnitLine === undefined && volumeWords.length === 0) {
    findings.push({ code: 'capacity-table-incomplete', path, value: '', limit: 'the unit of its volumes, as a line “volume-unit,m3” or in the heading “volume (m3)”', clause: 'HOUSE capacity table' })
  }
  return { value: { columns: columns ?? { kind: 'rows', increment: undefined }, level, volume: inHeading ?? inLine }, findings }
}

function columnsOf(cells: readonly string[]): Columns | undefined {
  const [first = '', second = '', third = ''] = cells
  if (/^(?:feet|ft)$/i.test(first) && /^(?:inches|in)$/i.test(second)) {
    const fraction = /^fraction(?:\s*\(in\))?$/i.test(third)
    return cells.length === (fraction ? 4 : 3) && VOLUME.test(cells.at(-1) ?? '') ? { kind: 'feet-inches', fraction } : undefined
  }
  if (!LEVEL.test(first)) return undefined
  if (VOLUME.test(second) && (third === '' || INCREMENT.test(third)) && cells.length <= 3) return { kind: 'rows', increment: third === '' ? undefined : incrementOf(third) }
  if (INCREMENT.test(second) && cells.length === 2) return { kind: 'increments', increment: incrementOf(second) }
  const offsets = cells.slice(1).map((cell) => parseLength(cell, ''))
  const lengths = offsets.flatMap((read) => (read.ok && !read.value.value.isNegative() ? [millimetres(read.value)] : []))
  if (lengths.length < 2 || lengths.length !== offsets.length) return undefined
  return lengths.every((one, i) => i === 0 || one.gt(lengths[i - 1] ?? one)) ? { kind: 'grid', offsets: lengths } : undefined
}

function incrementOf(cell: string): Increment {
  const unit = INCREMENT.exec(cell)?.[2]
  const per = unit === undefined ? undefined : parseLength(`1 ${unit}`, '')
  return { per: per?.ok === true ? millimetres(per.value) : undefined }
}

function trimmedEnd(cells: readonly string[]): readonly string[] {
  const last = cells.findLastIndex((cell) => cell !== '')
  return cells.slice(0, last + 1)
}
