import { accepted, refused, type Outcome } from '../refusal/index.ts'
import { Decimal } from '../units/index.ts'
import type { CapacityTable } from './tank.ts'

/** A row of the table as decimals: level above datum [mm], volume [table unit]. */
export interface TableRow { readonly level: Decimal; readonly volume: Decimal }

/** What the table says of a level, with the rows it was taken between. */
export interface TableReading {
  /** Unrounded, in the table's unit. */
  readonly volume: Decimal
  readonly lower: TableRow
  readonly upper: TableRow
  /** Volume per millimetre between the rows [table unit/mm]. */
  readonly increment: Decimal
}

/**
 * Volume at a level, by straight line between the rows on either side.
 *   V = V1 + (L − L1) / (L2 − L1) × (V2 − V1)
 * The nearest row is never taken for the level. Refuses `level-outside-table`; the table is taken as checked.
 * @param table a capacity table that {@link checkCapacityTable} accepted
 * @param levelMm innage above datum [mm], within the table's first and last row
 * @param path where the level stood, for the finding
 * @source MPMS-12.1.1 total observed volume
 * @checked INTERP-WI-01
 */
export function volumeAtLevel(table: CapacityTable, levelMm: Decimal, path: string): Outcome<TableReading> {
  const { rows } = table
  const first = rowAt(table, 0)
  const last = rowAt(table, rows.length - 1)
  if (levelMm.lt(first.level) || levelMm.gt(last.level)) {
    const limit = `${first.level.toFixed()} mm to ${last.level.toFixed()} mm`
    return refused({ code: 'level-outside-table', path, value: `${levelMm.toFixed()} mm`, limit, clause: 'MPMS-12.1.1 total observed volume' })
  }
  const at = lastRowNotAbove(table, levelMm)
  const lower = rowAt(table, at)
  const upper = rowAt(table, at + 1)
  const rise = upper.volume.minus(lower.volume)
  const step = upper.level.minus(lower.level)
  const volume = lower.volume.plus(levelMm.minus(lower.level).times(rise).div(step))
  return accepted({ volume, lower, upper, increment: rise.div(step) })
}

/**
 * Level at which the table holds a volume, by straight line between the rows on either side: the inverse of {@link volumeAtLevel}.
 *   L = L1 + (V − V1) / (V2 − V1) × (L2 − L1)
 * A volume below that of the first row stands at the first row. Refuses `out-of-range` above the last row.
 * @param table a capacity table that {@link checkCapacityTable} accepted
 * @param volume in the table's unit, 0 or more
 * @param path where the volume stood, for the finding
 * @source MPMS-12.1.1 total observed volume
 */
export function levelAtVolume(table: CapacityTable, volume: Decimal, path: string): Outcome<Decimal> {
  const first = rowAt(table, 0)
  const last = rowAt(table, table.rows.length - 1)
  if (volume.lte(first.volume)) return accepted(first.level)
  if (volume.gt(last.volume)) return refused({ code: 'out-of-range', path, value: `${volume.toFixed()} ${table.volumeUnit}`, limit: `at most ${last.volume.toFixed()} ${table.volumeUnit}, the last row of the table`, clause: 'MPMS-12.1.1 total observed volume' })
  const above = table.rows.findIndex((row) => volume.lte(row[1]))
  const [lower, upper] = [rowAt(table, above - 1), rowAt(table, above)]
  return accepted(lower.level.plus(volume.minus(lower.volume).times(upper.level.minus(lower.level)).div(upper.volume.minus(lower.volume))))
}

/** Index of the last row at or below a level, and never the last row of all, so that a row above it exists. */
function lastRowNotAbove(table: CapacityTable, levelMm: Decimal): number {
  let low = 0
  let high = table.rows.length - 2
  while (low < high) {
    const middle = (low + high + 1) >>> 1
    if (rowAt(table, middle).level.gt(levelMm)) high = middle - 1
    else low = middle
  }
  return low
}

function rowAt(table: CapacityTable, index: number): TableRow {
  const row = table.rows[index]
  if (row === undefined) throw new Error(`capacity table ${table.certificate} has no row ${index}`)
  return { level: new Decimal(row[0]), volume: new Decimal(row[1]) }
}
