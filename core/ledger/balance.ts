import { Decimal } from '../units/index.ts'
import type { Ticket } from '../ticket/index.ts'
import type { Entry, EntryKind, EntryOf } from './entry.ts'

/** A signed change of the book of one product in one tank: net standard volume. */
export interface BookChange { readonly tank: string; readonly product: string; readonly nsv: Decimal; readonly unit: string }

/** A signed change of what one party owns of one product in one tank. */
export interface OwnerChange extends BookChange { readonly party: string }

/** What the entries so far have put on the book, and what is needed to go on from here. */
export interface Book {
  /** By tank and product, in order of first change. */
  readonly changes: ReadonlyMap<string, BookChange>
  /** Change by each posted ticket, so that voiding it can take it back. */
  readonly tickets: ReadonlyMap<string, { readonly change: BookChange; readonly voided: boolean }>
  /** By tank, product and party, in order of first change. */
  readonly owners: ReadonlyMap<string, OwnerChange>
}

interface OpenBook extends Book {
  readonly changes: Map<string, BookChange>
  readonly tickets: Map<string, { readonly change: BookChange; readonly voided: boolean }>
  readonly owners: Map<string, OwnerChange>
}

/** The book before the first entry. */
export const EMPTY_BOOK: Book = { changes: new Map(), tickets: new Map(), owners: new Map() }

/**
 * What a ticket changes in the book of its tank: closing − opening net standard volume of the tank itself.
 * @param ticket a ticket as it is signed
 * @source HOUSE book
 */
export function ticketChange(ticket: Ticket): BookChange {
  const { value, unit } = ticket.result.tankChange.nsv
  return { tank: ticket.tank.code, product: ticket.product.code, nsv: new Decimal(value), unit }
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
    for (const { code, product, nsv } of movement.legs) book(onto, { tank: code, product: product.code, nsv: new Decimal(nsv.value), unit: nsv.unit }, seq)
  },
  'stock-allocated': (onto, { body: { allocation } }) => {
    for (const { party, nsv } of allocation.shares) own(onto, { tank: allocation.tank, product: allocation.product, party, nsv: new Decimal(nsv.value), unit: nsv.unit })
  },
  'ticket-posted': (onto, { seq, body: { ticket } }) => {
    if (onto.tickets.has(ticket.number)) throw new Error(`Entry ${seq} posts ${ticket.number} a second time`)
    const change = ticketChange(ticket)
    book(onto, change, seq)
    onto.tickets.set(ticket.number, { change, voided: false })
  },
  'ticket-voided': (onto, { seq, body: { number } }) => {
    const ticket = onto.tickets.get(number)
    if (ticket === undefined || ticket.voided) throw new Error(`Entry ${seq} voids ${number}, which is not a standing ticket`)
    book(onto, { ...ticket.change, nsv: ticket.change.nsv.negated() }, seq)
    onto.tickets.set(number, { change: ticket.change, voided: true })
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
  const onto: OpenBook = { changes: new Map(from.changes), tickets: new Map(from.tickets), owners: new Map(from.owners) }
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
