import { instantKey, refuseShares, type EntryOf, type StockMovement } from '../../core/ledger/index.ts'
import { wording } from '../../core/refusal/index.ts'
import { sumOfLegs } from '../../core/transfer/index.ts'
import { Decimal, VOLUME_UNITS, type VolumeUnit } from '../../core/units/index.ts'
import type { Known } from './known-before.ts'

/** A movement's legs say what was gauged under their own codes, and its difference is their sum. */
export function movementMisfits({ movement }: EntryOf<'stock-moved'>['body']): readonly string[] {
  const legs = movement.legs.map((leg) => ({ leg, unit: unitOf(leg.nsv.unit), nsv: leg.nsv.value }))
  const unread = legs.filter(({ unit, nsv }) => unit === undefined || !decimal(nsv))
  if (unread.length > 0 || !decimal(movement.difference.value)) return unread.map(({ leg }) => `the leg of ${leg.code} books ${leg.nsv.value} ${leg.nsv.unit}`)
  const keys = movement.legs.map(({ code, product }) => `${code} ${product.code}`)
  return [
    ...movement.legs.flatMap(({ code, tank, product, opening, closing }) => [
      ...(tank === undefined || tank.code === code ? [] : [`the leg of ${code} names the tank ${tank.code}`]),
      ...[opening, closing].flatMap((gauge) => (gauge === undefined || (gauge.tank === code && gauge.product === product.code) ? [] : [`the leg of ${code} was gauged as ${gauge.product} in ${gauge.tank}`])),
    ]),
    ...keys.filter((key, i) => keys.indexOf(key) < i).map((key) => `${key} takes part twice`),
    ...differenceMisfits(movement, legs),
  ]
}

function differenceMisfits({ difference }: StockMovement, legs: readonly { readonly unit: VolumeUnit | undefined; readonly nsv: string }[]): readonly string[] {
  const unit = unitOf(difference.unit)
  if (unit === undefined) return [`its difference is in ${difference.unit}`]
  const sum = sumOfLegs(legs.flatMap((leg) => (leg.unit === undefined ? [] : [{ nsv: new Decimal(leg.nsv), unit: leg.unit }])), unit)
  return sum.value.eq(difference.value) ? [] : [`its difference is ${difference.value} ${unit}, but its legs make ${sum.text}`]
}

/** Shares make what was booked there, once, while it stands; a change of owner in place makes 0. */
export async function allocationMisfits({ body: { allocation } }: EntryOf<'stock-allocated'>, known: Known): Promise<readonly string[]> {
  const { of, tank, product, at, shares } = allocation
  if (shares.some(({ nsv }) => !decimal(nsv.value))) return ['a share is no number']
  if (of === undefined) return sumMisfits(shares, new Decimal(0), shares[0]?.nsv.unit)
  const legs = of <= known.head.seq ? (await known.legs(of)).filter((leg) => leg.tank === tank && leg.product === product) : []
  const [leg] = legs
  if (leg === undefined) return [`it shares out entry ${of}, which books nothing of ${product} in ${tank}`]
  return [
    ...(leg.voidedBy === null ? [] : [`it shares out entry ${of}, which entry ${leg.voidedBy} voided`]),
    ...(leg.correctedBy === null ? [] : [`it shares out entry ${of}, which entry ${leg.correctedBy} took back`]),
    ...(await known.shared(of, tank, product) ? [`it shares out entry ${of}, which is shared out already`] : []),
    ...(instantKey(at) < instantKey(leg.bookedAt) ? [`it counts at ${at}, before what it shares out at ${leg.bookedAt}`] : []),
    ...sumMisfits(shares, legs.reduce((sum, { change }) => sum.plus(change), new Decimal(0)), leg.unit),
  ]
}

function sumMisfits(shares: Parameters<typeof refuseShares>[0], nsv: Decimal, word: string | undefined): readonly string[] {
  const unit = unitOf(word)
  return unit === undefined ? [`its shares are in ${word ?? 'no unit'}`] : refuseShares(shares, { nsv, unit }, 'shares').map(wording)
}

/** What counts in the book is a number in a unit of volume. */
export function quantityMisfits(what: string, { value, unit }: { readonly value: string; readonly unit: string }): readonly string[] {
  return decimal(value) && unitOf(unit) !== undefined ? [] : [`${what} is ${value} ${unit}, which is no volume`]
}

function unitOf(word: string | undefined): VolumeUnit | undefined {
  return VOLUME_UNITS.find((unit) => unit === word)
}

function decimal(text: string): boolean {
  return /^-?\d+(?:\.\d+)?$/.test(text)
}
