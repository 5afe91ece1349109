import { sql, type Kysely } from 'kysely'
import { instantKey } from '../../core/ledger/index.ts'
import type { MovementTable, Schema } from './schema.ts'
import { MOVEMENT_KINDS, type EverMoved, type Measurement, type Movement } from './store.ts'

/** What a movement that was not gauged has for its opening; written out, since the indexes of what was gauged are asked for by it. */
const NOTHING = sql.lit('')

/** Movements that stand and count in the book in (from, to]. */
export async function movementsBetween(db: Kysely<Schema>, from: string, to: string, tank: string | undefined): Promise<readonly Movement[]> {
  return (await bookedRows(db, from, to, tank).where('voided_seq', 'is', null).execute()).map(movementOf)
}

/** Movements between two gauges that stand, were not taken back, and whose time overlaps (from, to). */
export async function transfersOverlapping(db: Kysely<Schema>, tank: string, from: string, to: string): Promise<readonly Movement[]> {
  const gauged = gaugedRows(db, tank, await earliestOpening(db, tank, from), from, to)
  return (await gauged.where('voided_seq', 'is', null).where('corrected_by', 'is', null).execute()).map(movementOf)
}

/** What ever moved a tank, whatever was voided or taken back since: what counts in the book in (from, to], and what was between two gauges in that time. */
export async function everMoved(db: Kysely<Schema>, tank: string, from: string, to: string): Promise<EverMoved> {
  const booked = await bookedRows(db, from, to, tank).execute()
  const gauged = await gaugedRows(db, tank, await earliestOpening(db, tank, from), from, to).execute()
  return { booked: booked.map(movementOf), underWay: gauged.map(movementOf) }
}

function bookedRows(db: Kysely<Schema>, from: string, to: string, tank: string | undefined) {
  const query = db.selectFrom('movement').selectAll().where('booked_order', '>', instantKey(from)).where('booked_order', '<=', instantKey(to)).orderBy('booked_order').orderBy('id')
  return tank === undefined ? query : query.where('tank', '=', tank)
}

function gaugedRows(db: Kysely<Schema>, tank: string, earliest: string, from: string, to: string) {
  return db.selectFrom('movement').selectAll().where('opening_nsv', '<>', NOTHING).where('tank', '=', tank)
    .where('opened_order', '>', instantKey(earliest)).where('opened_order', '<', instantKey(to)).where('closed_order', '>', instantKey(from))
    .orderBy('closed_order').orderBy('seq')
}

/** What ends after an instant began no earlier than the longest of the tank before it: so both ends are looked for in one index. */
async function earliestOpening(db: Kysely<Schema>, tank: string, from: string): Promise<string> {
  const longest = await db.selectFrom('movement').select('lasted').where('tank', '=', tank).where('opening_nsv', '<>', NOTHING).orderBy('lasted', 'desc').limit(1).executeTakeFirst()
  return new Date(Date.parse(from) - 1000 * (longest?.lasted ?? 0)).toISOString()
}

/** Measured inventories with from ≤ at ≤ to. */
export async function measurementsBetween(db: Kysely<Schema>, from: string, to: string, tank: string | undefined): Promise<readonly Measurement[]> {
  let query = db.selectFrom('measurement').select(['seq', 'tank', 'product', 'at', 'nsv', 'unit'])
    .where('at_order', '>=', instantKey(from)).where('at_order', '<=', instantKey(to))
  if (tank !== undefined) query = query.where('tank', '=', tank)
  return query.orderBy('at_order').orderBy('seq').execute()
}

/** The entry with the last gauge of a tank that stands: an inventory, or the closing gauge of a ticket or stock movement. */
export async function lastGaugeOf(db: Kysely<Schema>, tank: string): Promise<number | undefined> {
  const measured = await db.selectFrom('measurement').select(['seq', 'at_order as order']).where('tank', '=', tank)
    .orderBy('at_order', 'desc').orderBy('seq', 'desc').limit(1).executeTakeFirst()
  const moved = await db.selectFrom('movement').select(['seq', 'closed_order as order']).where('tank', '=', tank)
    .where('voided_seq', 'is', null).where('corrected_by', 'is', null).where('opening_nsv', '<>', NOTHING)
    .orderBy('closed_order', 'desc').orderBy('seq', 'desc').limit(1).executeTakeFirst()
  if (measured === undefined || moved === undefined) return (measured ?? moved)?.seq
  if (measured.order === moved.order) return Math.max(measured.seq, moved.seq)
  return measured.order > moved.order ? measured.seq : moved.seq
}

/** A movement as the projection holds it. */
export function movementOf(row: MovementTable): Movement {
  const kind = MOVEMENT_KINDS.find((known) => known === row.kind)
  if (kind === undefined) throw new Error(`Entry ${row.seq} is projected as a ${row.kind}`)
  return {
    seq: row.seq, kind, number: row.number, place: row.place === 'line' ? 'line' : 'tank', tank: row.tank, product: row.product, openedAt: row.opened_at, closedAt: row.closed_at,
    bookedAt: row.booked_at, concerns: row.concerns, corrects: row.corrects, correctedBy: row.corrected_by, voidedBy: row.voided_seq,
    openingNsv: row.opening_nsv, closingNsv: row.closing_nsv, change: row.change, unit: row.unit,
  }
}
