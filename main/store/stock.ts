import type { Kysely } from 'kysely'
import { instantKey, isOfKind, STOCK_MOVEMENTS, type EntryOf } from '../../core/ledger/index.ts'
import { entryOf } from './entry-rows.ts'
import { movementOf } from './inventory.ts'
import type { Schema } from './schema.ts'
import type { Allocation, Movement } from './store.ts'

/** Everything that an entry booked, whether it still stands or not. */
export async function movementsOf(db: Kysely<Schema>, seq: number): Promise<readonly Movement[]> {
  return (await db.selectFrom('movement').selectAll().where('seq', '=', seq).orderBy('id').execute()).map(movementOf)
}

/** Stock movements, newest first. */
export async function stockEntries(db: Kysely<Schema>, limit: number, before: number | undefined): Promise<readonly EntryOf<'stock-moved'>[]> {
  let seqs = db.selectFrom('movement').select('seq').distinct().where('kind', 'in', [...STOCK_MOVEMENTS])
  if (before !== undefined) seqs = seqs.where('seq', '<', before)
  const rows = await db.selectFrom('entry').selectAll().where('seq', 'in', seqs.orderBy('seq', 'desc').limit(limit)).orderBy('seq', 'desc').execute()
  return rows.map(entryOf).flatMap((entry) => (isOfKind(entry, 'stock-moved') ? [entry] : []))
}

/** By which entry each of some stock movements was voided, or taken back out of a closed period. */
export async function voidsOf(db: Kysely<Schema>, seqs: readonly number[]): Promise<ReadonlyMap<number, EntryOf<'stock-voided'>>> {
  const found = new Map<number, EntryOf<'stock-voided'>>()
  if (seqs.length === 0) return found
  const rows = await db.selectFrom('movement').select(['voided_seq', 'corrected_by']).distinct().where('seq', 'in', [...seqs])
    .where((eb) => eb.or([eb('voided_seq', 'is not', null), eb('corrected_by', 'is not', null)])).execute()
  const by = rows.map(({ voided_seq, corrected_by }) => voided_seq ?? corrected_by ?? 0)
  if (by.length === 0) return found
  const entries = await db.selectFrom('entry').selectAll().where('seq', 'in', by).execute()
  for (const entry of entries.map(entryOf)) if (isOfKind(entry, 'stock-voided')) found.set(entry.body.seq, entry)
  return found
}

/** Shares of one product in one tank or line, in the order in which they count; shares of a void movement do not. */
export async function allocationsOf(db: Kysely<Schema>, tank: string, product: string): Promise<readonly Allocation[]> {
  const rows = await db.selectFrom('allocation').selectAll().where('tank', '=', tank).where('product', '=', product)
    .where(({ not, exists, selectFrom }) => not(exists(selectFrom('movement').select('movement.seq').whereRef('movement.seq', '=', 'allocation.of_seq').where('movement.voided_seq', 'is not', null))))
    .orderBy('at_order').orderBy('id').execute()
  return rows.map(({ seq, of_seq, party, at, nsv, unit }) => ({ seq, of: of_seq, tank, product, party, at, nsv, unit }))
}

/** Whether what an entry booked of one product in one place is shared out. */
export async function isShared(db: Kysely<Schema>, seq: number, tank: string, product: string): Promise<boolean> {
  return await db.selectFrom('allocation').select('id').where('of_seq', '=', seq).where('tank', '=', tank).where('product', '=', product).limit(1).executeTakeFirst() !== undefined
}

/** Movements that stand, count in the book at an instant, and were not shared out by then; the newest first. */
export async function unsharedMovements(db: Kysely<Schema>, at: string, limit: number, tank: string | undefined): Promise<readonly Movement[]> {
  const order = instantKey(at)
  let query = db.selectFrom('movement').selectAll().where('voided_seq', 'is', null).where('booked_order', '<=', order)
    .where(({ not, exists, selectFrom }) => not(exists(selectFrom('allocation').select('allocation.id').whereRef('allocation.of_seq', '=', 'movement.seq')
      .whereRef('allocation.tank', '=', 'movement.tank').whereRef('allocation.product', '=', 'movement.product').where('allocation.at_order', '<=', order))))
  if (tank !== undefined) query = query.where('tank', '=', tank)
  return (await query.orderBy('booked_order', 'desc').orderBy('id', 'desc').limit(limit).execute()).map(movementOf)
}
