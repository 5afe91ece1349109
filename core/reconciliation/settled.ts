import { instant, type BookedMovement, type TankRecord } from './gauged.ts'

/** Entries that closed the periods which end where another one begins and ends. */
export interface Settled { readonly from?: number | undefined; readonly to?: number | undefined }

/** What was on record of a tank when a period was closed; everything where it was not. */
export function enteredBy(tank: TankRecord, closedBy: number | undefined): TankRecord {
  if (closedBy === undefined) return tank
  const before = <T extends { readonly seq: number }>(records: readonly T[]): readonly T[] => records.filter(({ seq }) => seq < closedBy)
  return { ...tank, measurements: before(tank.measurements), movements: before(tank.movements) }
}

/**
 * A tank's record so that a closed end stays as it was closed: nothing that was entered later counts before it, and what
 * was entered later and lies between a closed beginning and its inventory counts after it, once, at the instant of that
 * inventory. Its own gauges are left aside, since the inventory was taken without knowing of it.
 * @param tank everything on record about it
 * @param settled entries that closed the periods at both ends
 * @param from the beginning of the period, RFC 3339
 * @param openingAt when the inventory that stands for it was measured
 * @source HOUSE reconciliation, closed ends
 */
export function settledRecord(tank: TankRecord, settled: Settled, from: string, openingAt: string): TankRecord {
  const known = enteredBy(tank, settled.to)
  const { from: closedBy } = settled
  if (closedBy === undefined) return known
  return { ...known, movements: known.movements.map((movement) => (movement.seq > closedBy && straddles(movement, from, openingAt) ? moved(movement, openingAt) : movement)) }
}

/** Counts after a beginning, and began or counts before the inventory that stands for it. */
function straddles({ openedAt, closedAt, bookedAt = closedAt, concerns = null }: BookedMovement, from: string, openingAt: string): boolean {
  if (instant(bookedAt) <= instant(from)) return false
  return instant(bookedAt) <= instant(openingAt) || (concerns === null && instant(openedAt) < instant(openingAt))
}

function moved(movement: BookedMovement, openingAt: string): BookedMovement {
  const { bookedAt = movement.closedAt } = movement
  // after the inventory by as little as there is, so that it lies in the span of this period
  const later = new Date(instant(openingAt) + 1).toISOString()
  return { ...movement, openingNsv: '', closingNsv: '', bookedAt: instant(bookedAt) > instant(openingAt) ? bookedAt : later }
}
