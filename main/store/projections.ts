import type { Kysely } from 'kysely'
import { instantKey, lineChangeOf, type Entry, type EntryKind, type EntryOf, type Late, type StockLeg } from '../../core/ledger/index.ts'
import { numberOf } from '../../core/ticket/index.ts'
import { insertRow, insertRows } from './insert-rows.ts'
import { projectAlarm, projectTrail } from './project-trail.ts'
import { searchedWords, WORDS, wordsOf } from './ticket-words.ts'
import type { MovementTable, Schema } from './schema.ts'

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
  'instrument-set': nothing,
  'person-set': nothing,
  'rules-set': nothing,
  'gauge-event': projectAlarm,
  'desk-event': nothing,
  'inventory-measured': (db, { seq, body: { snapshot, worksheet } }) => insertRow(db, 'measurement', {
    seq, tank: snapshot.tank, product: snapshot.product, at: snapshot.at, at_order: instantKey(snapshot.at),
    nsv: worksheet.quantity.nsv.value, unit: worksheet.quantity.nsv.unit,
  }),
  'ticket-posted': projectTicket,
  'ticket-voided': async (db, { seq, at, body: { number, reason, late } }) => {
    await db.updateTable('ticket').set({ voided_seq: seq, voided_at: at, void_reason: reason }).where('number', '=', number).execute()
    const ticket = await db.selectFrom('ticket').select('seq').where('number', '=', number).executeTakeFirst()
    await voidMovement(db, seq, ticket?.seq ?? 0, late)
  },
  'adjustment-posted': async (db, { seq, body: { tank, product, effectiveAt, nsv, late } }) => {
    await insertRow(db, 'movement', {
      id: seq * LEGS, seq, kind: 'adjustment', number: '', place: 'tank', tank, product, ...gauges(effectiveAt, effectiveAt, late),
      opening_nsv: '', closing_nsv: '', change: nsv.value, unit: nsv.unit,
    })
  },
  'stock-moved': async (db, { seq, body: { movement, late } }) => {
    for (const [place, leg] of movement.legs.entries()) {
      await insertRow(db, 'movement', {
        id: seq * LEGS + place, seq, kind: movement.kind, number: movement.reference ?? '', place: leg.place, tank: leg.code, product: leg.product.code,
        ...gauges(leg.opening?.at ?? movement.at, leg.closing?.at ?? movement.at, late),
        opening_nsv: gaugedNsv(leg, 'openingWorksheet'), closing_nsv: gaugedNsv(leg, 'closingWorksheet'), change: leg.nsv.value, unit: leg.nsv.unit,
      })
    }
  },
  'stock-voided': (db, { seq, body: { seq: of, late } }) => voidMovement(db, seq, of, late),
  'stock-allocated': async (db, { seq, body: { allocation: { of, tank, product, at, shares } } }) => {
    for (const [place, { party, nsv }] of shares.entries()) {
      await insertRow(db, 'allocation', {
        id: seq * LEGS + place, seq, of_seq: of ?? null, tank, product, party, at, at_order: instantKey(at), nsv: nsv.value, unit: nsv.unit,
      })
    }
  },
  'period-opened': (db, { seq, body: { period: { name, from, to } } }) => insertRow(db, 'period', {
    seq, name, from_at: from, to_at: to, from_order: instantKey(from), to_order: instantKey(to), closed_seq: null,
  }),
  'period-closed': (db, { seq, body: { seal } }) => db.updateTable('period').set({ closed_seq: seq }).where('name', '=', seal.period.name).execute(),
}

/** What was gauged in a tank; before a regrade there is none of the new product in it, and after it none of the old. */
function gaugedNsv(leg: StockLeg, which: 'openingWorksheet' | 'closingWorksheet'): string {
  const gauged = leg.openingWorksheet !== undefined || leg.closingWorksheet !== undefined
  return leg[which]?.quantity.nsv.value ?? (gauged ? '0' : '')
}

/** So many rows one entry may have in a projection. */
export const LEGS = 100

/** Whole seconds that are no fewer than what passed from one instant to another. */
function secondsBetween(from: string, to: string): number {
  return Math.ceil(Math.max(0, Date.parse(to) - Date.parse(from)) / 1000) + 1
}

/** When a movement was gauged, and when it counts in the book. */
function gauges(openedAt: string, closedAt: string, late: Late | undefined): Pick<MovementTable,
  'opened_at' | 'closed_at' | 'opened_order' | 'closed_order' | 'lasted' | 'booked_at' | 'booked_order' | 'voided_seq' | 'concerns' | 'corrects' | 'corrected_by'> {
  const bookedAt = late?.bookedAt ?? closedAt
  const opened = instantKey(openedAt)
  const closed = closedAt === openedAt ? opened : instantKey(closedAt)
  return {
    opened_at: openedAt, closed_at: closedAt, opened_order: opened, closed_order: closed, lasted: secondsBetween(openedAt, closedAt), booked_at: bookedAt, booked_order: bookedAt === closedAt ? closed : instantKey(bookedAt),
    voided_seq: null, concerns: late?.period ?? null, corrects: late?.corrects ?? null, corrected_by: null,
  }
}

/** What an entry booked counts no more: it never did, or where it stands in a closed period it is taken back in an open one. */
async function voidMovement(db: Kysely<Schema>, seq: number, of: number, late: Late | undefined): Promise<void> {
  if (late !== undefined) return takeBack(db, seq, of, late)
  await db.updateTable('movement').set({ voided_seq: seq }).where('seq', '=', of).execute()
}

/** What was booked in a closed period and turns out void: it stands there, and each leg is taken back in an open period. It names the entry that took it back; what else corrects it, as an adjustment, leaves it standing. */
async function takeBack(db: Kysely<Schema>, seq: number, of: number, late: Late): Promise<void> {
  const rows = await db.selectFrom('movement').select(['seq', 'number', 'place', 'tank', 'product', 'change', 'unit']).where('seq', '=', of).orderBy('id').execute()
  for (const [leg, row] of rows.entries()) {
    await insertRow(db, 'movement', {
      id: seq * LEGS + leg, seq, kind: 'correction', number: row.number, place: row.place, tank: row.tank, product: row.product, ...gauges(late.bookedAt, late.bookedAt, { ...late, corrects: row.seq }),
      opening_nsv: '', closing_nsv: '', change: negated(row.change), unit: row.unit,
    })
  }
  await db.updateTable('movement').set({ corrected_by: seq }).where('seq', '=', of).execute()
  await takeBackShares(db, seq, of, late.bookedAt)
}

/** Shares of a movement fall with it: not before they counted themselves. */
async function takeBackShares(db: Kysely<Schema>, seq: number, of: number, bookedAt: string): Promise<void> {
  const shares = await db.selectFrom('allocation').selectAll().where('of_seq', '=', of).orderBy('id').execute()
  for (const [place, share] of shares.entries()) {
    const at = instantKey(bookedAt) > share.at_order ? bookedAt : share.at
    await insertRow(db, 'allocation', { ...share, id: seq * LEGS + place, seq, of_seq: seq, at, at_order: instantKey(at), nsv: negated(share.nsv) })
  }
}

function negated(text: string): string {
  return text.startsWith('-') ? text.slice(1) : /^[0.]+$/.test(text) ? text : `-${text}`
}

async function projectTicket(db: Kysely<Schema>, { seq, body: { ticket, late } }: EntryOf<'ticket-posted'>): Promise<void> {
  const { moved, tankChange, opening, closing } = ticket.result
  await insertRow(db, 'ticket', {
    n: numberOf(ticket.number)?.n ?? 0, number: ticket.number, seq, kind: ticket.kind,
    tank: ticket.tank.code, product: ticket.product.code, product_name: ticket.productName,
    from_party: ticket.from.code, to_party: ticket.to.code,
    opened_at: ticket.opening.at, closed_at: ticket.closing.at, issued_at: ticket.issuedAt, closed_order: instantKey(ticket.closing.at),
    gsv: moved.gsv.value, gsv_unit: moved.gsv.unit, nsv: moved.nsv.value, nsv_unit: moved.nsv.unit, weight: moved.weight.value, weight_unit: moved.weight.unit,
    voided_seq: null, voided_at: null, void_reason: null, replaces: ticket.replaces ?? null, replaced_by: null, words: wordsOf(ticket),
  })
  await insertRows(db, 'ticket_word', searchedWords(ticket).map((word, i) => ({ id: seq * WORDS + i, seq, word })))
  if (ticket.replaces !== undefined) {
    await db.updateTable('ticket').set({ replaced_by: ticket.number }).where('number', '=', ticket.replaces).execute()
  }
  await insertRow(db, 'movement', {
    id: seq * LEGS, seq, kind: ticket.kind, number: ticket.number, place: 'tank', tank: ticket.tank.code, product: ticket.product.code, ...gauges(ticket.opening.at, ticket.closing.at, late),
    opening_nsv: opening.quantity.nsv.value, closing_nsv: closing.quantity.nsv.value, change: tankChange.nsv.value, unit: tankChange.nsv.unit,
  })
  const line = lineChangeOf(ticket)
  if (line === null) return
  await insertRow(db, 'movement', {
    id: seq * LEGS + 1, seq, kind: ticket.kind, number: ticket.number, place: 'line', tank: line.tank, product: line.product, ...gauges(ticket.opening.at, ticket.closing.at, late),
    opening_nsv: '', closing_nsv: '', change: line.nsv.toFixed(), unit: line.unit,
  })
}

function project<K extends EntryKind>(db: Kysely<Schema>, entry: EntryOf<K>): Promise<unknown> {
  return PROJECTORS[entry.kind](db, entry)
}

/** Brings the projections up to one more entry; called in the transaction that posts it. */
export async function projectEntry(db: Kysely<Schema>, entry: Entry): Promise<void> {
  await project(db, entry)
  await projectTrail(db, entry, LEGS)
}

/** The tables that are made from entries, in the order in which they can be emptied. */
export const PROJECTIONS = ['ticket', 'movement', 'measurement', 'allocation', 'period', 'alarm', 'trail', 'trail_about', 'ticket_word'] as const

/** Drops every projection and makes it again from the entries. */
export async function rebuildProjections(db: Kysely<Schema>, entries: AsyncIterable<Entry>): Promise<void> {
  for (const table of PROJECTIONS) await db.deleteFrom(table).execute()
  for await (const entry of entries) await projectEntry(db, entry)
}
