import { accepted, refused, type Outcome } from '../refusal/index.ts'
import { Decimal, type LengthUnit } from '../units/index.ts'
import { badLine, digitsIn, readLevelCell, readVolumeCell, volumeLimit, type CellRules, type CsvRow } from './capacity-table-cells.ts'
import type { Columns } from './capacity-table-heading.ts'

/** One level of a table as a line of the file gives it; volume or increment, or both. */
export interface Entry {
  readonly mm: string
  readonly volume: string | undefined
  /** Volume up to the next entry, or per {@link Columns} length; undefined where the cell is empty. */
  readonly increment: string | undefined
  readonly unit: LengthUnit
  /** Line of the file, for findings: `file line 12`, `file line 12, 3 mm`. */
  readonly place: string
}

const MM_PER_INCH = '25.4'

/**
 * Reads a line of the body by its layout; a line of a grid gives several entries.
 * Refuses `capacity-table-line`.
 * @param before unit of the levels so far
 * @param last whether this is the last line, whose increment or whose last columns may be empty
 */
export function readEntries(row: CsvRow, columns: Columns, rules: CellRules, before: LengthUnit | undefined, last: boolean, place: string): Outcome<readonly Entry[]> {
  switch (columns.kind) {
    case 'rows': return rowEntry(row, columns.increment !== undefined, rules, before, last, place)
    case 'increments': return incrementEntry(row, rules, before, last, place)
    case 'grid': return gridEntries(row, columns.offsets, rules, before, last, place)
    case 'feet-inches': return feetEntry(row, columns.fraction, rules, place)
  }
}

function rowEntry(row: CsvRow, withIncrement: boolean, rules: CellRules, before: LengthUnit | undefined, last: boolean, place: string): Outcome<readonly Entry[]> {
  const [levelCell = '', volumeCell = '', incrementCell = '', ...more] = row.cells
  if (more.some((cell) => cell !== '') || (!withIncrement && incrementCell !== '')) return refused(badLine(row, place, withIncrement ? 'one level, one volume and one increment' : 'one level and one volume'))
  const level = readLevelCell(levelCell, rules, before)
  if (!level.ok) return refused(badLine(row, place, level.limit))
  const volume = readVolumeCell(volumeCell, rules)
  if (volume === undefined) return refused(badLine(row, place, volumeLimit(volumeCell, rules)))
  const increment = withIncrement ? readIncrement(row, incrementCell, rules, last, place) : accepted(undefined)
  return increment.ok ? accepted([{ mm: level.mm, volume, increment: increment.value, unit: level.unit, place }]) : increment
}

function incrementEntry(row: CsvRow, rules: CellRules, before: LengthUnit | undefined, last: boolean, place: string): Outcome<readonly Entry[]> {
  const [levelCell = '', incrementCell = '', ...more] = row.cells
  if (more.some((cell) => cell !== '')) return refused(badLine(row, place, 'one level and one increment'))
  const level = readLevelCell(levelCell, rules, before)
  if (!level.ok) return refused(badLine(row, place, level.limit))
  const increment = readIncrement(row, incrementCell, rules, last, place)
  return increment.ok ? accepted([{ mm: level.mm, volume: undefined, increment: increment.value, unit: level.unit, place }]) : increment
}

function readIncrement(row: CsvRow, cell: string, rules: CellRules, last: boolean, place: string): Outcome<string | undefined> {
  if (cell === '' && last) return accepted(undefined)
  if (cell !== '' && last) return refused(badLine(row, place, 'no increment on the last line: it would lead to a line that is not there'))
  const digits = readVolumeCell(cell, rules)
  return digits === undefined ? refused(badLine(row, place, volumeLimit(cell, rules, 'an increment'))) : accepted(digits)
}

function gridEntries(row: CsvRow, offsets: readonly Decimal[], rules: CellRules, before: LengthUnit | undefined, last: boolean, place: string): Outcome<readonly Entry[]> {
  const [levelCell = '', ...cells] = row.cells
  if (cells.slice(offsets.length).some((cell) => cell !== '')) return refused(badLine(row, place, `one level and ${offsets.length} volumes`))
  const level = readLevelCell(levelCell, rules, before)
  if (!level.ok) return refused(badLine(row, place, level.limit))
  const filled = cells.slice(0, offsets.length).findLastIndex((cell) => cell !== '') + 1
  if (filled < offsets.length && !last) return refused(badLine(row, place, `${offsets.length} volumes; only the last line may end early`))
  if (filled === 0) return refused(badLine(row, place, 'at least one volume'))
  const entries: Entry[] = []
  for (const [i, offset] of offsets.slice(0, filled).entries()) {
    const cell = cells[i] ?? ''
    const volume = readVolumeCell(cell, rules)
    if (volume === undefined) return refused(badLine(row, place, volumeLimit(cell, rules)))
    entries.push({ mm: new Decimal(level.mm).plus(offset).toFixed(), volume, increment: undefined, unit: level.unit, place: `${place}, column ${i + 2}` })
  }
  return accepted(entries)
}

function feetEntry(row: CsvRow, withFraction: boolean, rules: CellRules, place: string): Outcome<readonly Entry[]> {
  const cells = row.cells.slice(0, withFraction ? 4 : 3)
  const [feetCell = '', inchCell = ''] = cells
  const volumeCell = cells[withFraction ? 3 : 2] ?? ''
  if (row.cells.slice(cells.length).some((cell) => cell !== '')) return refused(badLine(row, place, withFraction ? 'feet, inches, fraction and one volume' : 'feet, inches and one volume'))
  const fraction = withFraction ? fractionOfInch(cells[2] ?? '') : new Decimal(0)
  const inches = digitsIn(inchCell, 'point')
  if (!/^\d{1,3}$/.test(feetCell) || inches === undefined || Number(inches) >= 12 || fraction === undefined) {
    return refused(badLine(row, place, 'whole feet, inches below 12, and a fraction of an inch as 0, 1/8 or 5/16'))
  }
  const volume = readVolumeCell(volumeCell, rules)
  if (volume === undefined) return refused(badLine(row, place, volumeLimit(volumeCell, rules)))
  const mm = new Decimal(feetCell).times(12).plus(inches).plus(fraction).times(MM_PER_INCH).toFixed()
  return accepted([{ mm, volume, increment: undefined, unit: 'ft-in', place }])
}

/** `0`, `1/8`, `15/16`, or an empty cell for none: as decimals of an inch; halves to sixty-fourths. */
export function fractionOfInch(cell: string): Decimal | undefined {
  const plain = cell.trim()
  if (plain === '0' || plain === '') return new Decimal(0)
  const [, above, below] = /^(\d{1,2})\/(2|4|8|16|32|64)$/.exec(plain) ?? []
  if (above === undefined || below === undefined || Number(above) >= Number(below)) return undefined
  return new Decimal(above).div(below)
}
