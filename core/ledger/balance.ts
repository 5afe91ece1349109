import { Decimal } from '../units/index.ts'
import type { Ticket } from '../ticket/index.ts'
import type { Entry, EntryKind, EntryOf } from './entry.ts'

/** A signed change of the book of one product in one tank or line: net standard volume. */
export interface BookChange { readonly tank: string; readonly product: string; readonly nsv: Decimal; readonly unit: string }

/** A signed change of what one party owns of one product in one tank. */
export interface OwnerChange extends BookChange { readonly party: string }

/** What the entries so far have put on the book, and what is needed to go on from here. */
export interface Book {
  /** By tank and product, in order of first change. */
  readonly changes: ReadonlyMap<string, BookChange>
  /** Change by each posted ticket, so that voiding it can take it back. */
  readonly tickets: ReadonlyMap<string, TicketOnBook>
  /** Changes by each stock movement, by the number of its entry. */
  readonly movements: ReadonlyMap<number, StockOnBook>
  /** By tank, product and party, in order of first change. */
  readonly owners: ReadonlyMap<string, OwnerChange>
  /** Shares by the entry whose change they share out: they fall with it. */
  readonly shares: ReadonlyMap<number, readonly OwnerChange[]>
}

/** What a ticket put on the book: of its tank, and of the line that it names. */
export interface TicketOnBook { readonly seq: number; readonly change: BookChange; readonly line: BookChange | null; readonly voided: boolean }

/** What a stock movement put on the book, leg by leg. */
export interface StockOnBook { readonly changes: readonly BookChange[]; readonly voided: boolean }

interface OpenBook extends Book {
  readonly changes: Map<string, BookChange>
  readonly tickets: Map<string, TicketOnBook>
  readonly movements: Map<number, StockOnBook>
  readonly owners: Map<string, OwnerChange>
  readonly shares: Map<number, readonly OwnerChange[]>
}

/** The book before the first entry. */
export const EMPTY_BOOK: Book = { changes: new Map(), tickets: new Map(), movements: new Map(), owners: new Map(), shares: new Map() }

/**
 * What a ticket changes in the book of its tank: closing − opening net standard volume of the tank itself.
 * @param ticket a ticket as it is signed
 * @source HOUSE book
 */
export function ticketChange(ticket: Ticket): BookChange {
  const { value, unit } = ticket.result.tankChange.nsv
  return { tank: ticket.tank.code, product: ticket.product.code, nsv: new Decimal(value), unit }
}

/**
 * What a ticket changes in the book of the line that its line fill names: contents at the closing gauge less those at the
 * opening one; null where it names none.
 *   receipt: moved = Δtank + Δline;  delivery: moved = −(Δtank + Δline)
 * @param ticket a ticket as it is signed
 * @source HOUSE book
 */
export function lineChangeOf({ lineFill, kind, product, result: { moved, tankChange } }: Ticket): BookChange | null {
  if (lineFill?.line === undefined) return null
  const across = new Decimal(moved.nsv.value)
  return { tank: lineFill.line, product: product.code, nsv: (kind === 'receipt' ? across : across.negated()).minus(tankChange.nsv.value), unit: moved.nsv.unit }
}

function book(onto: OpenBook, change: BookChange, seq: number): void {
  const key = `${change.tank}\n${change.product}\n${change.unit}`
  const before = onto.changes.get(key)
  if (!change.nsv.isFinite()) throw new Error(`Entry ${seq} changes the book by ${change.nsv.toString()}`)
  onto.changes.set(key, before === undefined ? change : { ...change, nsv: before.nsv.plus(change.nsv) })
}

function own(onto: OpenBook, change: OwnerChange): void {
  const key = `${change.tank}\n${change.product}\n${change.party}\n${change.unit}`
  const before = onto.owners.get(key)
  onto.owners.set(key, before === undefined ? change : { ...change, nsv: before.nsv.plus(change.nsv) })
}

function negated<C extends BookChange>(change: C): C {
  return { ...change, nsv: change.nsv.negated() }
}

/** Shares of what an entry booked fall with it. */
function takeBackShares(onto: OpenBook, of: number): void {
  for (const share of onto.shares.get(of) ?? []) own(onto, negated(share))
}

const nothing = (): void => undefined

/** What each kind of entry does to the book. A kind without a row does not compile. */
const EFFECTS: { readonly [K in EntryKind]: (onto: OpenBook, entry: EntryOf<K>) => void } = {
  'terminal-set': nothing,
  'tank-set': nothing,
  'product-set': nothing,
  'party-set': nothing,
  'identity-set': nothing,
  'limit-set': nothing,
  // an assertion by the tank: compared, never plugged
  'inventory-measured': nothing,
  'gauge-verified': nothing,
  'probe-zeroed': nothing,
  'instrument-set': nothing,
  'person-set': nothing,
  'rules-set': nothing,
  'period-opened': nothing,
  'period-closed': nothing,
  'gauge-event': nothing,
  'desk-event': nothing,
  'stock-moved': (onto, { seq, body: { movement } }) => {
    const changes = movement.legs.map(({ code, product, nsv }): BookChange => ({ tank: code, product: product.code, nsv: new Decimal(nsv.value), unit: nsv.unit }))
    for (const change of changes) book(onto, change, seq)
    onto.movements.set(seq, { changes, voided: false })
  },
  'stock-voided': (onto, { seq, body: { seq: of } }) => {
    const movement = onto.movements.get(of)
    if (movement === undefined || movement.voided) throw new Error(`Entry ${seq} voids entry ${of}, which is not a standing stock movement`)
    for (const change of movement.changes) book(onto, negated(change), seq)
    takeBackShares(onto, of)
    onto.movements.set(of, { ...movement, voided: true })
  },
  'stock-allocated': (onto, { body: { allocation: { of, tank, product, shares } } }) => {
    const changes = shares.map(({ party, nsv }): OwnerChange => ({ tank, product, party, nsv: new Decimal(nsv.value), unit: nsv.unit }))
    for (const change of changes) own(onto, change)
    if (of !== undefined) onto.shares.set(of, [...onto.shares.get(of) ?? [], ...changes])
  },
  'ticket-posted': (onto, { seq, body: { ticket } }) => {
    if (onto.tickets.has(ticket.number)) throw new Error(`Entry ${seq} posts ${ticket.number} a second time`)
    const change = ticketChange(ticket)
    const line = lineChangeOf(ticket)
    book(onto, change, seq)
    if (line !== null) book(onto, line, seq)
    onto.tickets.set(ticket.number, { seq, change, line, voided: false })
  },
  'ticket-voided': (onto, { seq, body: { number } }) => {
    const ticket = onto.tickets.get(number)
    if (ticket === undefined || ticket.voided) throw new Error(`Entry ${seq} voids ${number}, which is not a standing ticket`)
    book(onto, negated(ticket.change), seq)
    if (ticket.line !== null) book(onto, negated(ticket.line), seq)
    takeBackShares(onto, ticket.seq)
    onto.tickets.set(number, { ...ticket, voided: true })
  },
  'adjustment-posted': (onto, { seq, body }) => {
    book(onto, { tank: body.tank, product: body.product, nsv: new Decimal(body.nsv.value), unit: body.nsv.unit }, seq)
  },
}

function apply<K extends EntryKind>(onto: OpenBook, entry: EntryOf<K>): void {
  EFFECTS[entry.kind](onto, entry)
}

/**
 * The book after entries, going on from a book: balances(a ++ b) = balances(b, balances(a)).
 * Throws when an entry voids what does not stand or posts a number twice: such a ledger is damaged.
 * @param entries in order of sequence
 * @param from the book they go on from
 * @source HOUSE book
 */
export function balances(entries: Iterable<Entry>, from: Book = EMPTY_BOOK): Book {
  const onto: OpenBook = { changes: new Map(from.changes), tickets: new Map(from.tickets), movements: new Map(from.movements), owners: new Map(from.owners), shares: new Map(from.shares) }
  for (const entry of entries) apply(onto, entry)
  return onto
}

/**
 * The book after one more entry.
 * @param before the book it goes on from
 * @param entry the next entry
 * @source HOUSE book
 */
export function applyEntry(before: Book, entry: Entry): Book {
  return balances([entry], before)
}
