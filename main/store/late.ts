import type { Kysely } from 'kysely'
import { movementOf } from './inventory.ts'
import type { Schema } from './schema.ts'
import type { Movement } from './store.ts'

/** Late corrections that stand, by the closed period that they concern. */
export async function lateOfPeriod(db: Kysely<Schema>, name: string): Promise<readonly Movement[]> {
  const rows = await db.selectFrom('movement').selectAll().where('concerns', '=', name).where('voided_seq', 'is', null).orderBy('booked_order').orderBy('id').execute()
  return rows.map(movementOf)
}
