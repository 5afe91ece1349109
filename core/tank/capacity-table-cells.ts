import type { Finding } from '../refusal/index.ts'
import { millimetres, parseLength, parseVolume, plainText, VOLUME_UNITS, type LengthUnit, type VolumeUnit } from '../units/index.ts'

/** A line of the file: its number, from 1, and its cells. */
export interface CsvRow { readonly line: number; readonly cells: readonly string[] }

/** What separates whole numbers from decimals in the file; never guessed: a comma has to be stated. */
export const DECIMAL_MARKS = ['point', 'comma'] as const
/** One of {@link DECIMAL_MARKS}. */
export type DecimalMark = (typeof DECIMAL_MARKS)[number]

/** What the file says of the cells below its heading. */
export interface CellRules {
  readonly level: LengthUnit | undefined
  readonly volume: VolumeUnit | undefined
  readonly mark: DecimalMark
}

const BARE = /^\d{1,20}(?:\.\d{1,20})?$/
const FEET = new Set<LengthUnit>(['ft', 'in', 'ft-in'])
const HINT = '; a decimal comma is stated in the line “decimal-mark,comma”'

/** A volume unit by its word, in any case; undefined for anything else. */
export function volumeUnitNamed(word: string | undefined): VolumeUnit | undefined {
  const wanted = word?.trim().toLowerCase().replace('³', '3')
  return VOLUME_UNITS.find((unit) => unit.toLowerCase() === wanted)
}

/** The cell with a decimal point, or undefined where it has a mark that the file does not use. */
export function withPoint(cell: string, mark: DecimalMark): string | undefined {
  const plain = plainText(cell)
  if (mark === 'point') return plain
  return plain.includes('.') || plain.split(',').length > 2 ? undefined : plain.replace(',', '.')
}

/** What to say of a cell with a comma that the file did not announce. */
export function commaHint(cell: string, mark: DecimalMark): string {
  return mark === 'point' && /\d,\d/.test(cell) ? HINT : ''
}

/** Bare digits of a cell as decimal text; undefined for anything else. */
export function digitsIn(cell: string, mark: DecimalMark): string | undefined {
  const plain = withPoint(cell, mark)
  return plain !== undefined && BARE.test(plain) ? plain : undefined
}

/** A level cell in millimetres, exact, with the unit it was written in; or what should stand there. */
export type LevelCell = { readonly ok: true; readonly mm: string; readonly unit: LengthUnit } | { readonly ok: false; readonly limit: string }

/** Reads `1200` under a heading with a unit, or `1200 mm`, `3 ft 11 1/4 in` with its own. */
export function readLevelCell(cell: string, rules: CellRules, before: LengthUnit | undefined): LevelCell {
  const headed = rules.level
  const text = withPoint(cell, rules.mark) ?? cell
  const bare = BARE.test(text)
  if (bare && (headed === undefined || headed === 'ft-in')) return { ok: false, limit: 'a level with its unit as 1200 mm or 3 ft 11 1/4 in, or a heading level (mm)' }
  const read = parseLength(bare ? `${text} ${headed}` : text, '')
  if (!read.ok || read.value.value.isNegative()) return { ok: false, limit: `a level of zero or more as 1200 mm, 1.2 m or 3 ft 11 1/4 in${commaHint(cell, rules.mark)}` }
  const { unit } = read.value
  const wanted = headed ?? before
  if (wanted !== undefined && !sameFamily(unit, wanted)) return { ok: false, limit: `a level in ${wanted}, like the rest of the table` }
  return { ok: true, mm: millimetres(read.value).toFixed(), unit }
}

/** Feet, inches and both together may stand in one table; metric units may not be mixed. */
function sameFamily(a: LengthUnit, b: LengthUnit): boolean {
  return a === b || (FEET.has(a) && FEET.has(b))
}

/** The digits of a volume as written; undefined where it is none, or in another unit than the table. */
export function readVolumeCell(cell: string, rules: CellRules): string | undefined {
  const plain = withPoint(cell, rules.mark)
  if (plain === undefined) return undefined
  if (BARE.test(plain)) return plain
  const read = parseVolume(plain, '')
  const digits = /^[\d.]+/.exec(plain)?.[0] ?? ''
  return read.ok && read.value.unit === rules.volume && BARE.test(digits) ? digits : undefined
}

/** What a volume cell should hold. */
export function volumeLimit(cell: string, rules: CellRules, what = 'a volume'): string {
  return `${what} of zero or more as 241.318${rules.volume === undefined ? '' : `, in ${rules.volume}`}${commaHint(cell, rules.mark)}`
}

/** A line that is none of this table. */
export function badLine(row: CsvRow, place: string, limit: string): Finding {
  return { code: 'capacity-table-line', path: place, value: row.cells.join(','), limit, clause: 'HOUSE capacity table' }
}
