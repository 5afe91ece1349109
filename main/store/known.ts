import { sql, type Kysely } from 'kysely'
import { versionHash, type Entry } from '../../core/ledger/index.ts'
import { entryAt } from './entry-rows.ts'
import { fixedQuery } from './fixed-query.ts'
import type { Known } from './posting-rules.ts'
import type { Schema } from './schema.ts'

const lastTicket = fixedQuery((db) => db.selectFrom('ticket').select('n').orderBy('n', 'desc').limit(sql.lit(1)))
const hashAt = fixedQuery((db, seq: number) => db.selectFrom('entry').select('hash').where('seq', '=', seq))

/** How many tickets were ever numbered: numbers run from 1 without gaps, so it is the last one. */
export async function ticketCount(db: Kysely<Schema>): Promise<number> {
  const [last] = await lastTicket(db)
  return last?.n ?? 0
}

/** How a ticket stands in the register. */
export async function standing(db: Kysely<Schema>, number: string): ReturnType<Known['standing']> {
  const row = await db.selectFrom('ticket').select(['voided_seq', 'replaced_by']).where('number', '=', number).executeTakeFirst()
  return row === undefined ? undefined : { voided: row.voided_seq !== null, replacedBy: row.replaced_by }
}

type Version = Awaited<ReturnType<Known['version']>>

/** Versions by the hash of the entry that set them, which stands for all that is in it; so many of the last used. */
const VERSIONS = new Map<string, Version>()
const KEPT = 500

/** The tank or product that an entry set, with the hash by which tickets name it. */
export async function versionSetBy(db: Kysely<Schema>, seq: number): ReturnType<Known['version']> {
  const [row] = await hashAt(db, seq)
  if (row === undefined) return undefined
  // a capacity table is long: reading and hashing it again takes longer than posting the ticket
  const version = VERSIONS.has(row.hash) ? VERSIONS.get(row.hash) : versionOf(await entryAt(db, seq))
  VERSIONS.delete(row.hash)
  VERSIONS.set(row.hash, version)
  if (VERSIONS.size > KEPT) VERSIONS.delete(VERSIONS.keys().next().value ?? '')
  return version
}

/** The tank or product in an entry; undefined when it sets neither. */
export function versionOf(entry: Entry | undefined): Version {
  switch (entry?.kind) {
    case 'tank-set': return { kind: 'tank', code: entry.body.tank.code, hash: versionHash(entry.body.tank) }
    case 'product-set': return { kind: 'product', code: entry.body.product.code, hash: versionHash(entry.body.product) }
    default: return undefined
  }
}
