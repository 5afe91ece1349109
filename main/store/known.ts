import { sql, type Kysely } from 'kysely'
import { isOfKind, versionHash, type Entry } from '../../core/ledger/index.ts'
import { sealFigures } from './book.ts'
import { entryAt, entryOf } from './entry-rows.ts'
import { fixedQuery } from './fixed-query.ts'
import { periodsFrom, periodsOf, sealBefore } from './periods.ts'
import type { Known } from './known-before.ts'
import type { Schema } from './schema.ts'
import { isShared, movementsOf } from './stock.ts'
import type { Head } from './store.ts'

const lastTicket = fixedQuery((db) => db.selectFrom('ticket').select('n').orderBy('n', 'desc').limit(sql.lit(1)))
const hashAt = fixedQuery((db, seq: number) => db.selectFrom('entry').select('hash').where('seq', '=', seq))

/** What is known in a ledger whose last entry is the head. */
export function knownIn(db: Kysely<Schema>, head: Head): Known {
  return {
    head, ticketCount: () => ticketCount(db), standing: (number) => standing(db, number), version: (seq) => versionSetBy(db, seq),
    legs: (seq) => movementsOf(db, seq), shared: (seq, tank, product) => isShared(db, seq, tank, product),
    periods: () => periodsOf(db), periodsFrom: (at) => periodsFrom(db, at), booked: (seq) => booked(db, seq),
    sealFigures: async (period) => sealFigures(db, period, head.seq, await sealBefore(db, period)),
    identity: async (id) => {
      const rows = await db.selectFrom('entry').selectAll().where('kind', '=', 'identity-set').orderBy('seq').execute()
      const entry = rows.map(entryOf).findLast((one) => isOfKind(one, 'identity-set') && one.body.identity.id === id)
      return entry?.kind === 'identity-set' ? entry.body.identity : undefined
    },
  }
}

/** Whether an entry booked a movement. */
export async function booked(db: Kysely<Schema>, seq: number): Promise<boolean> {
  return await db.selectFrom('movement').select('id').where('seq', '=', seq).limit(1).executeTakeFirst() !== undefined
}

/** How many tickets were ever numbered: numbers run from 1 without gaps, so it is the last one. */
export async function ticketCount(db: Kysely<Schema>): Promise<number> {
  const [last] = await lastTicket(db)
  return last?.n ?? 0
}

/** How a ticket stands in the register. */
export async function standing(db: Kysely<Schema>, number: string): ReturnType<Known['standing']> {
  const row = await db.selectFrom('ticket').innerJoin('movement', 'movement.seq', 'ticket.seq').select(['ticket.voided_seq', 'replaced_by', 'booked_at']).where('ticket.number', '=', number).executeTakeFirst()
  return row === undefined ? undefined : { voided: row.voided_seq !== null, replacedBy: row.replaced_by, bookedAt: row.booked_at }
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
    case 'instrument-set': return { kind: 'instrument', code: entry.body.instrument.code, hash: versionHash(entry.body.instrument) }
    case 'product-set': return { kind: 'product', code: entry.body.product.code, hash: versionHash(entry.body.product) }
    default: return undefined
  }
}
