import type { BookedMovement, MeasuredInventory, TankRecord } from './gauged.ts'

/** A product by its code, as it was in force at the end of the period. */
export interface NamedProduct { readonly product: string; readonly productName: string; readonly volumeUnit: TankRecord['volumeUnit'] }

/**
 * A tank as it is reconciled, under each name that its product had in the period: a regrade gives one name up and takes
 * another. Where a tank does not bear a name at an end of the period, there is none of that product in it: its inventory
 * there is 0, whoever gauged what.
 * @param record everything on record about the tank, under the name that it bears at the end of the period
 * @param period its two ends
 * @param named a product by its code; undefined where none is in force
 * @source HOUSE reconciliation
 */
export function underEachName(record: TankRecord, { from, to }: { readonly from: string; readonly to: string }, named: (code: string) => NamedProduct | undefined): readonly TankRecord[] {
  const regrades = record.movements.filter(({ kind }) => kind === 'regrade')
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

/** Whether a regrade gives the name to the tank. */
function isTakenUp(movement: BookedMovement | undefined): boolean {
  return movement !== undefined && Number(movement.openingNsv) === 0
}

/** Whether a regrade takes the name from the tank. */
function isGivenUp(movement: BookedMovement | undefined): boolean {
  return movement !== undefined && !isTakenUp(movement)
}

function noneThen(at: string, none: boolean, { product, volumeUnit: unit }: NamedProduct): readonly MeasuredInventory[] {
  return none ? [{ seq: 0, product, at, nsv: '0', unit }] : []
}
