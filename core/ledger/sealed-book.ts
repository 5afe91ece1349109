import { Decimal } from '../units/index.ts'
import type { Seal } from './period.ts'

/** Book per place and product, and per owner in them, at one instant. */
export type SealedBook = Pick<Seal, 'balances' | 'owners'>

/** A signed change of one product in one tank or line. */
export interface PlaceChange { readonly code: string; readonly product: string; readonly nsv: string; readonly unit: string }
/** A signed change of what one party owns of it. */
export interface PartyChange extends PlaceChange { readonly party: string }

/** The book before anything was booked. */
export const NOTHING_SEALED: SealedBook = { balances: [], owners: [] }

/**
 * The book at an instant: what a seal says, and every change since, added exactly.
 *   book = seal + Σ change
 * The order of lines is that of code, product, unit and party, so that the same book has the same text.
 * @param seal the book it goes on from; {@link NOTHING_SEALED} from the beginning
 * @param places changes of the book, in any order
 * @param parties changes of what parties own, in any order
 * @source HOUSE book
 */
export function bookAfter(seal: SealedBook, places: Iterable<PlaceChange>, parties: Iterable<PartyChange>): SealedBook {
  const balances = summed<PlaceChange>([...seal.balances.map(({ code, product, nsv }) => ({ code, product, nsv: nsv.value, unit: nsv.unit })), ...places], (one) => [one.code, one.product, one.unit])
  const owners = summed<PartyChange>([...seal.owners.map(({ code, product, party, nsv }) => ({ code, product, party, nsv: nsv.value, unit: nsv.unit })), ...parties], (one) => [one.code, one.product, one.unit, one.party])
  return {
    balances: balances.map(({ code, product, nsv, unit }) => ({ code, product, nsv: { value: nsv, unit } })),
    owners: owners.map(({ code, product, party, nsv, unit }) => ({ code, product, party, nsv: { value: nsv, unit } })),
  }
}

function summed<C extends PlaceChange>(changes: Iterable<C>, keyOf: (change: C) => readonly string[]): readonly C[] {
  const sums = new Map<string, { readonly first: C; sum: Decimal }>()
  for (const change of changes) {
    const key = keyOf(change).join('\n')
    const before = sums.get(key)
    if (before === undefined) sums.set(key, { first: change, sum: new Decimal(change.nsv) })
    else before.sum = before.sum.plus(change.nsv)
  }
  return [...sums].toSorted(([a], [b]) => (a < b ? -1 : 1)).map(([, { first, sum }]) => ({ ...first, nsv: sum.toFixed() }))
}
