import { parseInstant, type Instant } from '../../../core/gauge/index.ts'
import { apportion as share, instantKey, ownersBelowZero, refuseShares, type StockAllocation } from '../../../core/ledger/index.ts'
import { accepted, allOf, andThen, orRefuse, refused, type Finding, type Outcome } from '../../../core/refusal/index.ts'
import { discriminate } from '../../../core/rounding/index.ts'
import { Decimal, parseVolume, VOLUME_UNITS, type VolumeUnit } from '../../../core/units/index.ts'
import type { LedgerStore, Movement } from '../../store/index.ts'
import { atHead } from '../at-head.ts'
import { bookable } from '../bookable.ts'
import type { Handler } from '../context.ts'
import { partyOn, productInForce, readRecord, type OnRecord } from '../on-record.ts'
import { post } from '../post.ts'
import { reconcileLedger } from '../reconcile-ledger.ts'
import { notInFuture } from '../times.ts'
import { enteredBy } from '../who.ts'

const CLAUSE = 'HOUSE owners'

/** What is shared out: what a movement booked there, or nothing at all where product changes hands in place. */
interface Shared { readonly nsv: Decimal; readonly unit: VolumeUnit; readonly at: string }

export const allocateStock: Handler<'allocate-stock'> = async ({ of, tank, product, at, shares, reason, by: given }, context, { signal }) => {
  const by = enteredBy(context, given)
  return atHead(context.store, signal, async (head) => {
    const { store, now } = context
    const record = await readRecord(store)
    const what = of === undefined ? inPlace({ product, at, record, now: now() }) : await ofMovement({ of, tank, product, at, store, now: now() })
    const read = orRefuse(allOf<{ what: Shared; shares: StockAllocation['shares']; reason: null }>({
      what, shares: readShares(shares, record, what.ok ? what.value.at : now()),
      reason: reason.trim() === '' ? refused({ code: 'reason-missing', path: 'reason', value: reason, limit: 'say in a sentence whose product it is and why', clause: CLAUSE }) : accepted(null),
    }))
    const allocation: StockAllocation = { ...(of !== undefined && { of }), tank, product, at: read.what.at, shares: [...read.shares], reason }
    orRefuse(allOf<{ fits: null; period: unknown }>({ fits: await fits(allocation, read.what, store), period: await bookable({ opened: read.what.at, closed: read.what.at }, undefined, context, { opened: 'at', closed: 'at' }) }))
    return post(store, { kind: 'stock-allocated', at: now(), by, body: { allocation } }, { expectedHead: head.hash })
  })
}

/** Shares add up to what is shared out; in place, nobody gives what he has not. */
async function fits({ of, tank, product, shares, at }: StockAllocation, what: Shared, store: LedgerStore): Promise<Outcome<null>> {
  const wrong = refuseShares(shares, what, 'shares')
  if (wrong.length > 0 || of !== undefined) return wrong.length > 0 ? refused(...wrong) : accepted(null)
  const givers = shares.filter(({ nsv }) => new Decimal(nsv.value).isNegative()).map(({ party }) => party)
  const all = [...await store.allocations(tank, product), ...shares.map(({ party, nsv }) => ({ party, at, nsv: nsv.value }))]
  const below = ownersBelowZero(all, at).filter(({ party }) => givers.includes(party)).map(({ party, nsv, at: then }): Finding => ({
    code: 'owner-below-zero', path: `shares.${shares.findIndex((one) => one.party === party)}.nsv`, value: `${party} would have ${discriminate(`volume ${what.unit}`, nsv).text} ${what.unit} at ${then}`,
    limit: 'nothing to hand over beyond what is there', clause: CLAUSE,
  }))
  return below.length > 0 ? refused(...below) : accepted(null)
}

function inPlace({ product, at, record, now }: { readonly product: string; readonly at: string | undefined; readonly record: OnRecord; readonly now: string }): Outcome<Shared> {
  const time: Outcome<Instant> = at === undefined ? refused({ code: 'missing-value', path: 'at', value: '', limit: 'the instant at which the product changes hands', clause: CLAUSE }) : notInFuture(at, now, 'at')
  return andThen(time, ({ text }) => andThen(productInForce(record, product, text, 'product'), ({ value }) => accepted({ nsv: new Decimal(0), unit: value.volumeUnit, at: text })))
}

async function ofMovement({ of, tank, product, at, store, now }: { readonly of: number; readonly tank: string; readonly product: string; readonly at: string | undefined; readonly store: LedgerStore; readonly now: string }): Promise<Outcome<Shared>> {
  const legs = (await store.movementsOf(of)).filter((leg) => leg.tank === tank && leg.product === product)
  const leg = legs[0]
  const unit = unitOf(leg)
  const none = (limit: string): Outcome<never> => refused({ code: 'nothing-to-share', path: 'of', value: String(of), limit, clause: CLAUSE })
  if (leg === undefined || unit === undefined) return none(`give the entry of a ticket, an adjustment or a stock movement that changed ${product} in ${tank}`)
  if (leg.voidedBy !== null) return none(`it was voided by entry ${leg.voidedBy}`)
  if (leg.correctedBy !== null) return none(`it was taken back by entry ${leg.correctedBy}`)
  if (await store.isShared(of, tank, product)) return refused({ code: 'already-shared', path: 'of', value: String(of), limit: 'change the owner in place instead', clause: CLAUSE })
  const sum = legs.reduce((all, one) => all.plus(one.change), new Decimal(0))
  if (at === undefined) return accepted({ nsv: sum, unit, at: leg.bookedAt })
  return andThen(notInFuture(at, now, 'at'), (instant) => instant.order < instantKey(leg.bookedAt)
    ? refused({ code: 'out-of-range', path: 'at', value: at, limit: `${leg.bookedAt} or later, when the movement counts`, clause: CLAUSE })
    : accepted({ nsv: sum, unit, at: instant.text }))
}

function unitOf(leg: Movement | undefined): VolumeUnit | undefined {
  return VOLUME_UNITS.find((known) => known === leg?.unit)
}

function readShares(shares: readonly { readonly party: string; readonly nsv: string }[], record: OnRecord, at: string): Outcome<StockAllocation['shares']> {
  const read = shares.map(({ party, nsv }, i) => allOf<{ party: unknown; volume: { value: Decimal; unit: VolumeUnit } }>({
    party: partyOn(record, party, `shares.${i}.party`, parseInstant(at, '').ok ? at : undefined), volume: parseVolume(nsv, `shares.${i}.nsv`),
  }))
  const findings = read.flatMap((one) => (one.ok ? [] : one.findings))
  if (findings.length > 0) return refused(...findings)
  return accepted(read.flatMap((one, i) => (one.ok ? [{ party: shares[i]?.party ?? '', nsv: { value: one.value.volume.value.toFixed(), unit: one.value.volume.unit } }] : [])))
}

const LISTED = 200

export const ownersStock: Handler<'owners-stock'> = async ({ at: asked, tank }, { store, now }) => {
  const at = asked === undefined ? now() : orRefuse(parseInstant(asked, 'at')).text
  const record = await readRecord(store)
  const [{ balances, owners }, open] = await Promise.all([store.book(at), store.unshared(at, LISTED + 1, tank)])
  const nameOf = (code: string): string => { const found = partyOn(record, code, '', at); return found.ok ? found.value.name : code }
  return {
    at,
    places: balances.filter(({ code }) => tank === undefined || code === tank).map(({ code, product, nsv: book }) => {
      const own = owners.filter((one) => one.code === code && one.product === product && one.nsv.unit === book.unit && !new Decimal(one.nsv.value).isZero())
      const rest = own.reduce((left, { nsv }) => left.minus(nsv.value), new Decimal(book.value))
      return {
        tank: code, product, book: inSteps(book), unshared: inSteps({ value: rest.toFixed(), unit: book.unit }),
        owners: own.map(({ party, nsv }) => ({ party, name: nameOf(party), nsv: inSteps(nsv), belowZero: new Decimal(nsv.value).isNegative() })),
      }
    }),
    unshared: open.slice(0, LISTED).map(({ seq, kind, number, place, tank: code, product, bookedAt, change, unit }) => ({ seq, kind, number, place, tank: code, product, bookedAt, nsv: inSteps({ value: change, unit }) })),
    more: open.length > LISTED,
  }
}

/** A booked quantity with the decimals of its unit. */
function inSteps({ value, unit }: { readonly value: string; readonly unit: string }): { value: string; unit: string } {
  const known = VOLUME_UNITS.find((one) => one === unit)
  if (known === undefined) return { value, unit }
  const rounded = discriminate(`volume ${known}`, new Decimal(value))
  return { value: rounded.value.eq(value) ? rounded.text : value, unit }
}

export const apportion: Handler<'apportion'> = async ({ tank, product, from, to, basis, nsv }, { store, now }) => {
  const record = await readRecord(store)
  const found = orRefuse(allOf<{ from: unknown; to: unknown; product: { value: { volumeUnit: VolumeUnit } } }>({
    from: parseInstant(from, 'from'), to: parseInstant(to, 'to'), product: productInForce(record, product, parseInstant(to, '').ok ? to : now(), 'product'),
  }))
  const unit = found.product.value.volumeUnit
  const amount = nsv === undefined ? await lossOrGain(store, { tank, product, from, to }, unit) : orRefuse(inBookUnit(nsv, unit))
  const bases = basis === 'stock' ? await stockAt(store, tank, product, to) : await throughputOf(store, { tank, product, from, to })
  return orRefuse(share({ nsv: amount, unit }, bases, basis))
}

function inBookUnit(text: string, unit: VolumeUnit): Outcome<Decimal> {
  return andThen(parseVolume(text, 'nsv'), (volume) => {
    if (volume.unit !== unit) return refused({ code: 'unit-not-accepted', path: 'nsv', value: text, limit: `the volume in ${unit}, in which the product is booked`, clause: CLAUSE })
    const booked = discriminate(`volume ${unit}`, volume.value)
    return booked.value.eq(volume.value) ? accepted(volume.value) : refused({ code: 'out-of-range', path: 'nsv', value: text, limit: `a whole number of steps of ${booked.rule.split(',')[0] ?? ''} ${unit}`, clause: CLAUSE })
  })
}

interface Slice { readonly tank: string; readonly product: string; readonly from: string; readonly to: string }

async function lossOrGain(store: LedgerStore, { tank, product, from, to }: Slice, unit: VolumeUnit): Promise<Decimal> {
  const report = await reconcileLedger(store, { from, to })
  const found = report.tanks.find((one) => one.tank === tank && one.product === product)
  if (found !== undefined) return new Decimal(found.result.lossGain.value)
  const missing = report.missing.find((one) => one.tank === tank)
  return orRefuse(refused({ code: 'inventory-missing', path: 'tank', value: `${product} in ${tank}`, limit: missing?.message ?? `it could not be reconciled; give the loss or gain in ${unit} itself`, clause: CLAUSE }))
}

type Bases = readonly { readonly party: string; readonly base: Decimal }[]

async function stockAt(store: LedgerStore, tank: string, product: string, at: string): Promise<Bases> {
  const { owners } = await store.book(at)
  return owners.filter((one) => one.code === tank && one.product === product).map(({ party, nsv }) => ({ party, base: new Decimal(nsv.value) }))
}

/** What each owner received and delivered: shares of tickets that count in the period, whatever their sign. */
async function throughputOf(store: LedgerStore, { tank, product, from, to }: Slice): Promise<Bases> {
  const tickets = new Set((await store.movements(from, to, tank)).filter(({ kind }) => kind === 'receipt' || kind === 'delivery').map(({ seq }) => seq))
  const sums = new Map<string, Decimal>()
  for (const { party, of, nsv } of await store.allocations(tank, product)) {
    if (of !== null && tickets.has(of)) sums.set(party, (sums.get(party) ?? new Decimal(0)).plus(new Decimal(nsv).abs()))
  }
  return [...sums].map(([party, base]) => ({ party, base }))
}
