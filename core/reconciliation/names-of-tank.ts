import { instant, type BookedMovement, type MeasuredInventory, type TankRecord } from './gauged.ts'

/** A product by its code, as it was in force at the end of the period. */
export interface NamedProduct { readonly product: string; readonly productName: string; readonly volumeUnit: TankRecord['volumeUnit'] }

/**
 * A tank as it is reconciled, under each name that its product had in the period: a regrade gives one name up and takes
 * another. Where a tank does not bear a name at an end of the period, there is none of that product in it: its inventory
 * there is 0, whoever gauged what. A regrade of a closed period that is taken back in an open one turns its names round there.
 * @param record everything on record about the tank, under the name that it bears at the end of the period
 * @param period its two ends
 * @param named a product by its code; undefined where none is in force
 * @source HOUSE reconciliation
 */
export function underEachName(record: TankRecord, { from, to }: { readonly from: string; readonly to: string }, named: (code: string) => NamedProduct | undefined): readonly TankRecord[] {
  const regrades = record.movements.filter((movement) => isRenaming(movement, record.movements) && countsIn(movement, from, to))
  if (regrades.length === 0) return [record]
  const codes = [...new Set([record.product, ...regrades.map(({ product }) => product)])]
  return codes.flatMap((code): readonly TankRecord[] => {
    const product = named(code)
    if (product === undefined) return []
    const own = regrades.filter((movement) => movement.product === code)
    const measurements = record.measurements.filter((measured) => measured.product === code)
    return [{
      ...record, ...product,
      measurements: [...measurements, ...noneThen(from, isTakenUp(own[0]), product), ...noneThen(to, isGivenUp(own.at(-1)), product)],
      movements: record.movements.filter((movement) => movement.product === code),
    }]
  })
}

/** A regrade, or one taken back: an entry that books two products in the one tank. */
function isRenaming({ kind, seq, product }: BookedMovement, all: readonly BookedMovement[]): boolean {
  return kind === 'regrade' || (kind === 'correction' && all.some((other) => other.seq === seq && other.product !== product))
}

/** A record reaches beyond the ends of its period: a name that is given up after it was there at its end. */
function countsIn({ bookedAt, closedAt }: BookedMovement, from: string, to: string): boolean {
  const at = instant(bookedAt ?? closedAt)
  return instant(from) < at && at <= instant(to)
}

/** Whether a regrade gives the name to the tank. */
function isTakenUp(movement: BookedMovement | undefined): boolean {
  if (movement?.kind === 'correction') return !movement.change.startsWith('-')
  return movement !== undefined && Number(movement.openingNsv) === 0
}

/** Whether a regrade takes the name from the tank. */
function isGivenUp(movement: BookedMovement | undefined): boolean {
  return movement !== undefined && !isTakenUp(movement)
}

function noneThen(at: string, none: boolean, { product, volumeUnit: unit }: NamedProduct): readonly MeasuredInventory[] {
  return none ? [{ seq: 0, product, at, nsv: '0', unit }] : []
}
