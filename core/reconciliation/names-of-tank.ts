import { instant, NO_ENTRY, type BookedMovement, type MeasuredInventory, type TankRecord } from './gauged.ts'
import { asItStood } from './settled.ts'

/** A product by its code, as it was in force at the end of the period. */
export interface NamedProduct { readonly product: string; readonly productName: string; readonly volumeUnit: TankRecord['volumeUnit'] }

/** What is reconciled: two ends, and the entry that closed it. */
export interface NamedSpan { readonly from: string; readonly to: string; readonly closedBy?: number | undefined }

/**
 * A tank as it is reconciled, under each name that its product had in the period: a regrade gives one name up and takes
 * another. Where a tank does not bear a name at an end of the period, there is none of that product in it: its inventory
 * there is 0, whoever gauged what. A regrade of a closed period that is taken back in an open one turns its names round there.
 * @param record everything on record about the tank, under the name that it bears at the end of the period
 * @param period its two ends, and the entry that closed it, where it is closed: a regrade voided since was one then
 * @param named a product by its code; undefined where none is in force
 * @source HOUSE reconciliation
 */
export function underEachName(record: TankRecord, { from, to, closedBy }: NamedSpan, named: (code: string) => NamedProduct | undefined): readonly TankRecord[] {
  const renamings = asItStood(record, closedBy).movements.filter((movement) => isRenaming(movement, record.movements))
  if (renamings.length === 0) return [record]
  // a regrade near an end that counts in the period beside gives no other name here; what lies beyond it was another product all the same
  const regrades = renamings.filter((movement) => countsIn(movement, from, to))
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

/** The tanks that stand under several names. */
export function namedTwice(tanks: readonly { readonly tank: string }[]): ReadonlySet<string> {
  const codes = tanks.map(({ tank }) => tank)
  return new Set(codes.filter((code, i) => codes.indexOf(code) < i))
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
  return none ? [{ seq: NO_ENTRY, product, at, nsv: '0', unit }] : []
}
