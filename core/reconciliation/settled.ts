import { instant, isGauged, type BookedMovement, type TankRecord } from './gauged.ts'

/** Entries that closed the periods which end where another one begins and ends. */
export interface Settled { readonly from?: number | undefined; readonly to?: number | undefined }

/** What is on record of a tank, and how both ends of a period were closed. */
export interface SettledTank { readonly tank: TankRecord; readonly settled: Settled }

/** A tank's record as it stood before an entry: what was posted later is not there yet, and what was voided later stands. Now, where there is no such entry. */
export function asItStood(tank: TankRecord, entry = Infinity): TankRecord {
  return {
    ...tank,
    measurements: tank.measurements.filter(({ seq }) => seq < entry),
    movements: tank.movements.filter(({ seq, voidedBy }) => seq < entry && (voidedBy ?? Infinity) >= entry),
  }
}

/**
 * What counts in a period: what stood when it was closed, up to its closing inventory, less what the period before had
 * counted when that was closed, up to the inventory in which they meet. So every movement counts in one of the two, whenever
 * it was posted or voided. What was posted after the closing and lies before that inventory counts right after it, and what
 * was voided after the closing is taken back there: both without their gauges, since the inventory was taken without knowing of it.
 *   counted = { standing, up to closing } − { standing when the period before was closed, up to opening }
 * @param record everything on record about the tank, what was voided too, and which entries closed both ends
 * @param openingAt when the inventory that stands for the beginning was measured
 * @param closingAt when the one that stands for the end was
 * @source HOUSE reconciliation, closed ends
 */
export function countedBetween({ tank, settled }: SettledTank, openingAt: string, closingAt: string): readonly BookedMovement[] {
  const standing = asItStood(tank, settled.to).movements
  const upToClosing = standing.filter((movement) => countsBy(movement, closingAt))
  if (settled.from === undefined) return upToClosing.filter((movement) => !countsBy(movement, openingAt))
  const before = asItStood(tank, settled.from).movements.filter((movement) => countsBy(movement, openingAt))
  return [
    ...upToClosing.filter((movement) => !before.includes(movement)).map((movement) => (beginsBefore(movement, openingAt) ? withoutGauges(movement, openingAt) : movement)),
    ...before.filter((movement) => !standing.includes(movement)).map((movement) => takenBack(movement, openingAt)),
  ]
}

/** A gauged movement counts at its closing gauge, any other when it is booked. */
function countsAt(movement: BookedMovement): number {
  return instant(isGauged(movement) ? movement.closedAt : movement.bookedAt ?? movement.closedAt)
}

function countsBy(movement: BookedMovement, at: string): boolean {
  return countsAt(movement) <= instant(at)
}

function beginsBefore(movement: BookedMovement, at: string): boolean {
  return isGauged(movement) ? instant(movement.openedAt) < instant(at) : countsBy(movement, at)
}

function withoutGauges(movement: BookedMovement, openingAt: string): BookedMovement {
  return { ...movement, openingNsv: '', closingNsv: '', bookedAt: countsBy(movement, openingAt) ? rightAfter(openingAt) : movement.bookedAt ?? movement.closedAt }
}

function takenBack(movement: BookedMovement, openingAt: string): BookedMovement {
  const at = rightAfter(openingAt)
  return { ...movement, kind: 'correction', openedAt: at, closedAt: at, bookedAt: at, openingNsv: '', closingNsv: '', change: negative(movement.change) }
}

/** After the inventory by as little as there is, so that it lies in the span of this period. */
function rightAfter(openingAt: string): string {
  return new Date(instant(openingAt) + 1).toISOString()
}

/** The text of a decimal with its sign turned; digits stay as they are. */
export function negative(text: string): string {
  return text.startsWith('-') ? text.slice(1) : `-${text}`
}
