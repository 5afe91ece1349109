import type { Kysely } from 'kysely'
import { instantKey, type Entry, type EntryKind, type EntryOf } from '../../core/ledger/index.ts'
import { numberOf, type Ticket } from '../../core/ticket/index.ts'
import type { Schema } from './schema.ts'

type Projector<K extends EntryKind> = (db: Kysely<Schema>, entry: EntryOf<K>) => Promise<unknown>

const nothing = (): Promise<void> => Promise.resolve()

/** What each kind of entry does to the projections. A kind without a row does not compile. */
const PROJECTORS: { readonly [K in EntryKind]: Projector<K> } = {
  'terminal-set': nothing,
  'tank-set': nothing,
  'product-set': nothing,
  'party-set': nothing,
  'identity-set': nothing,
  'limit-set': nothing,
  'gauge-verified': nothing,
  'probe-zeroed': nothing,
  'inventory-measured': (db, { seq, body: { snapshot, worksheet } }) => db.insertInto('measurement').values({
    seq, tank: snapshot.tank, product: snapshot.product, at: snapshot.at, at_order: instantKey(snapshot.at),
    nsv: worksheet.quantity.nsv.value, unit: worksheet.quantity.nsv.unit,
  }).execute(),
  'ticket-posted': projectTicket,
  'ticket-voided': async (db, { seq, at, body: { number, reason } }) => {
    await db.updateTable('ticket').set({ voided_seq: seq, voided_at: at, void_reason: reason }).where('number', '=', number).execute()
    await db.updateTable('movement').set({ voided_seq: seq })
      .where('seq', '=', db.selectFrom('ticket').select('ticket.seq').where('ticket.number', '=', number)).execute()
  },
  'adjustment-posted': (db, { seq, body: { tank, product, effectiveAt, nsv } }) => db.insertInto('movement').values({
    seq, kind: 'adjustment', number: '', tank, product,
    opened_at: effectiveAt, closed_at: effectiveAt, opened_order: instantKey(effectiveAt), closed_order: instantKey(effectiveAt),
    opening_nsv: '', closing_nsv: '', change: nsv.value, unit: nsv.unit, voided_seq: null,
  }).execute(),
}

async function projectTicket(db: Kysely<Schema>, { seq, body: { ticket } }: EntryOf<'ticket-posted'>): Promise<void> {
  const { moved, tankChange, opening, closing } = ticket.result
  await db.insertInto('ticket').values({
    n: numberOf(ticket.number)?.n ?? 0, number: ticket.number, seq, kind: ticket.kind,
    tank: ticket.tank.code, product: ticket.product.code, product_name: ticket.productName,
    from_party: ticket.from.code, to_party: ticket.to.code,
    opened_at: ticket.opening.at, closed_at: ticket.closing.at, issued_at: ticket.issuedAt, closed_order: instantKey(ticket.closing.at),
    gsv: moved.gsv.value, gsv_unit: moved.gsv.unit, nsv: moved.nsv.value, nsv_unit: moved.nsv.unit, weight: moved.weight.value, weight_unit: moved.weight.unit,
    voided_seq: null, voided_at: null, void_reason: null, replaces: ticket.replaces ?? null, replaced_by: null, words: wordsOf(ticket),
  }).execute()
  if (ticket.replaces !== undefined) {
    await db.updateTable('ticket').set({ replaced_by: ticket.number }).where('number', '=', ticket.replaces).execute()
  }
  await db.insertInto('movement').values({
    seq, kind: ticket.kind, number: ticket.number, tank: ticket.tank.code, product: ticket.product.code,
    opened_at: ticket.opening.at, closed_at: ticket.closing.at, opened_order: instantKey(ticket.opening.at), closed_order: instantKey(ticket.closing.at),
    opening_nsv: opening.quantity.nsv.value, closing_nsv: closing.quantity.nsv.value, change: tankChange.nsv.value, unit: tankChange.nsv.unit, voided_seq: null,
  }).execute()
}

/** What a search in the register looks through. */
function wordsOf(ticket: Ticket): string {
  const { from, to, signers } = ticket
  const words = [
    ticket.number, ticket.kind, ticket.tank.code, ticket.product.code, ticket.productName, from.code, from.name, to.code, to.name,
    ticket.reference, ticket.remarks, ticket.replaces, ...signers.map((signer) => signer.name),
  ]
  return words.filter((word) => word !== undefined).join('\n').toLowerCase()
}

function project<K extends EntryKind>(db: Kysely<Schema>, entry: EntryOf<K>): Promise<unknown> {
  return PROJECTORS[entry.kind](db, entry)
}

/** Brings the projections up to one more entry; called in the transaction that posts it. */
export async function projectEntry(db: Kysely<Schema>, entry: Entry): Promise<void> {
  await project(db, entry)
}

/** The tables that are made from entries, in the order in which they can be emptied. */
export const PROJECTIONS = ['ticket', 'movement', 'measurement'] as const

/** Drops every projection and makes it again from the entries. */
export async function rebuildProjections(db: Kysely<Schema>, entries: AsyncIterable<Entry>): Promise<void> {
  for (const table of PROJECTIONS) await db.deleteFrom(table).execute()
  for await (const entry of entries) await projectEntry(db, entry)
}
