import { z } from 'zod'
import { accepted, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate, LARGEST_REMAINDER, shareOut } from '../rounding/index.ts'
import { Decimal, type VolumeUnit } from '../units/index.ts'
import { inputLine, quantitySchema, worksheetLineSchema, type Quantity, type WorksheetLine } from '../worksheet/index.ts'
import { instantKey } from './instant.ts'
import type { StockAllocation } from './stock.ts'

const CLAUSE = 'HOUSE owners'
type Shares = StockAllocation['shares']

/**
 * What is wrong with shares of an amount: each party once, each in the unit of the book and no finer than it, and all of
 * them together exactly the amount.
 * Refuses `party-named-twice`, `unit-not-accepted`, `out-of-range`, `shares-do-not-add-up`.
 * @param shares signed
 * @param amount what a movement booked; 0 for a change of owner in place
 * @param path of the shares
 * @source HOUSE owners
 */
export function refuseShares(shares: Shares, amount: { readonly nsv: Decimal; readonly unit: VolumeUnit }, path: string): readonly Finding[] {
  const { unit } = amount
  const findings = shares.flatMap(({ party, nsv }, i): readonly Finding[] => {
    const at = `${path}.${i}`
    const twice: readonly Finding[] = shares.findIndex((other) => other.party === party) < i ? [{ code: 'party-named-twice', path: `${at}.party`, value: party, limit: 'put both in one', clause: CLAUSE }] : []
    if (nsv.unit !== unit) return [...twice, { code: 'unit-not-accepted', path: `${at}.nsv`, value: `${nsv.value} ${nsv.unit}`, limit: `the volume in ${unit}, in which it is booked`, clause: CLAUSE }]
    const booked = discriminate(`volume ${unit}`, new Decimal(nsv.value))
    return booked.value.eq(nsv.value) ? twice : [...twice, { code: 'out-of-range', path: `${at}.nsv`, value: `${nsv.value} ${unit}`, limit: `a whole number of steps of ${booked.rule.split(',')[0] ?? ''} ${unit}`, clause: CLAUSE }]
  })
  if (findings.length > 0) return findings
  const sum = shares.reduce((all, { nsv }) => all.plus(nsv.value), new Decimal(0))
  if (sum.eq(amount.nsv)) return []
  const text = (value: Decimal): string => `${discriminate(`volume ${unit}`, value).text} ${unit}`
  return [{ code: 'shares-do-not-add-up', path, value: text(sum), limit: `they must make ${text(amount.nsv)}, so ${text(amount.nsv.minus(sum))} is missing`, clause: CLAUSE }]
}

/** A share that counts from an instant on. */
export interface CountedShare { readonly party: string; readonly at: string; readonly nsv: string }

/** Where a party would have less than nothing. */
export interface BelowZero { readonly party: string; readonly at: string; readonly nsv: Decimal }

/**
 * The first instant from `from` on at which each party would have less than nothing, by shares as they count one after
 * another; empty where nobody would.
 * @param shares of one product in one place, in any order
 * @param from UTC instant
 * @source HOUSE owners
 */
export function ownersBelowZero(shares: readonly CountedShare[], from: string): readonly BelowZero[] {
  const first = new Map<string, BelowZero>()
  const stock = new Map<string, Decimal>()
  const begin = instantKey(from)
  const ordered = shares.map((share) => ({ ...share, order: instantKey(share.at) })).toSorted((a, b) => (a.order < b.order ? -1 : a.order > b.order ? 1 : 0))
  for (const [i, { party, nsv, order, at }] of ordered.entries()) {
    stock.set(party, (stock.get(party) ?? new Decimal(0)).plus(nsv))
    // what counts at one instant counts together
    if (ordered[i + 1]?.order === order) continue
    const next = ordered[i + 1]?.order
    if (order < begin && next !== undefined && next <= begin) continue
    for (const [owner, left] of stock) if (left.isNegative() && !left.isZero() && !first.has(owner)) first.set(owner, { party: owner, at: order < begin ? from : at, nsv: left })
  }
  return [...first.values()]
}

/** By what a loss or gain is apportioned among owners. */
export const APPORTIONING = {
  stock: 'in proportion to what each owner has at the end of the period',
  throughput: 'in proportion to what each owner received and delivered in the period',
} as const
export const APPORTIONED_BY = ['stock', 'throughput'] as const satisfies readonly (keyof typeof APPORTIONING)[]
export type ApportionedBy = (typeof APPORTIONED_BY)[number]

export const apportionedSchema = z.strictObject({
  basis: z.enum(APPORTIONED_BY),
  /** The rule in words, with how its shares are rounded. */
  rule: z.string(),
  amount: quantitySchema,
  shares: z.array(z.strictObject({ party: z.string(), base: quantitySchema, nsv: quantitySchema })),
  lines: z.array(worksheetLineSchema),
})
export type Apportioned = Readonly<z.infer<typeof apportionedSchema>>

/**
 * A loss or gain shared out among owners, so that the shares add up to it to the last digit; a proposal, which books
 * nothing.
 *   share = amount × base / Σ base
 * Refuses `owner-below-zero` for a base below 0, and `out-of-range` where nobody has a base above 0.
 * @param amount signed, in the unit of the book
 * @param bases stock or throughput of each owner, in the same unit; those of 0 get nothing
 * @source HOUSE owners
 */
export function apportion(amount: { readonly nsv: Decimal; readonly unit: VolumeUnit }, bases: readonly { readonly party: string; readonly base: Decimal }[], basis: ApportionedBy): Outcome<Apportioned> {
  const { unit } = amount
  const text = (value: Decimal): string => discriminate(`volume ${unit}`, value).text
  const below = bases.filter(({ base }) => base.isNegative() && !base.isZero())
    .map(({ party, base }): Finding => ({ code: 'owner-below-zero', path: 'basis', value: `${party} has ${text(base)} ${unit}`, limit: '0 or more before a loss or gain can be apportioned by it', clause: CLAUSE }))
  const owners = bases.filter(({ base }) => !base.isZero()).toSorted((a, b) => (a.party < b.party ? -1 : 1))
  if (below.length > 0) return refused(...below)
  if (owners.length === 0) return refused({ code: 'out-of-range', path: 'basis', value: `0 ${unit}`, limit: `more than 0 ${unit} of ${basis} of some owner`, clause: CLAUSE })
  const shares = shareOut(`volume ${unit}`, amount.nsv, owners.map(({ base }) => base))
  const quantity = (value: string): Quantity => ({ value, unit })
  const lines: readonly WorksheetLine[] = [
    inputLine({ symbol: 'LG', name: 'Loss or gain that is apportioned', value: text(amount.nsv), unit, clause: CLAUSE }),
    ...owners.map(({ party, base }) => inputLine({ symbol: `B ${party}`, name: `Base of ${party}: ${basis}`, value: text(base), unit, clause: CLAUSE })),
    ...owners.map(({ party }, i): WorksheetLine => ({
      symbol: `S ${party}`, name: `Share of ${party}`, value: shares[i]?.text ?? '', unit, unrounded: shares[i]?.unrounded ?? '', rounding: LARGEST_REMAINDER,
      formula: `LG × B ${party} / Σ B`, clause: CLAUSE, from: ['LG', ...owners.map((owner) => `B ${owner.party}`)], notes: [],
    })),
  ]
  return accepted({
    basis, rule: `${APPORTIONING[basis]}; ${LARGEST_REMAINDER}`, amount: quantity(text(amount.nsv)),
    shares: owners.map(({ party, base }, i) => ({ party, base: quantity(text(base)), nsv: quantity(shares[i]?.text ?? '') })), lines: [...lines],
  })
}
