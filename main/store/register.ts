import { sql, type Kysely, type RawBuilder, type SqlBool } from 'kysely'
import { instantKey } from '../../core/ledger/index.ts'
import { TRANSFER_KINDS } from '../../core/transfer/index.ts'
import type { Schema, TicketTable } from './schema.ts'
import { ticketsWithRarest } from './ticket-words.ts'
import type { RegisterFilter, RegisterLine } from './store.ts'

/** The register, newest first; searched by beginnings of words, all of which a ticket must have; a period takes the tickets whose closing gauge lies in (from, to]. */
export async function registerLines(db: Kysely<Schema>, filter: RegisterFilter): Promise<readonly RegisterLine[]> {
  const { search, tank, product, from, to, before, limit } = filter
  const words = search?.toLowerCase().split(/\s+/).filter((part) => part !== '') ?? []
  const among = await ticketsWithRarest(db, words)
  if (among?.length === 0) return []
  let query = db.selectFrom('ticket').selectAll()
  if (among !== undefined) query = query.where('seq', 'in', among)
  for (const word of words) query = query.where(holds(word))
  if (tank !== undefined) query = query.where('tank', '=', tank)
  if (product !== undefined) query = query.where('product', '=', product)
  if (from !== undefined) query = query.where('closed_order', '>', instantKey(from))
  if (to !== undefined) query = query.where('closed_order', '<=', instantKey(to))
  if (before !== undefined) query = query.where('seq', '<', before)
  return linesOf(db, await query.orderBy('seq', 'desc').limit(limit).execute())
}

export async function lineOfNumber(db: Kysely<Schema>, number: string): Promise<RegisterLine | undefined> {
  const [line] = await linesOf(db, await db.selectFrom('ticket').selectAll().where('number', '=', number).execute())
  return line
}

/** Tickets that concern a closed period, or were taken back in a later one, say so. */
async function linesOf(db: Kysely<Schema>, rows: readonly TicketTable[]): Promise<readonly RegisterLine[]> {
  if (rows.length === 0) return []
  const marked = await db.selectFrom('movement').select(['seq', 'concerns', 'booked_at', 'corrected_by']).where('seq', 'in', rows.map(({ seq }) => seq))
    .where((eb) => eb.or([eb('concerns', 'is not', null), eb('corrected_by', 'is not', null)])).execute()
  const bySeq = new Map(marked.map((one) => [one.seq, one]))
  return rows.map((row) => {
    const { concerns: period = null, booked_at: bookedAt = '', corrected_by: seq = null } = bySeq.get(row.seq) ?? {}
    return { ...lineOf(row), ...period === null ? {} : { late: { period, bookedAt } }, ...seq === null ? {} : { takenBack: { seq } } }
  })
}

/** Both databases know `like`; what is a sign to it stands for itself here. */
function holds(word: string): RawBuilder<SqlBool> {
  return sql<SqlBool>`words like ${`%${word.replace(/[\\%_]/g, '\\$&')}%`} escape '\\'`
}

function lineOf(row: TicketTable): RegisterLine {
  const kind = TRANSFER_KINDS.find((known) => known === row.kind)
  if (kind === undefined) throw new Error(`The register holds ${row.number} as a ${row.kind}`)
  return {
    number: row.number, seq: row.seq, kind, tank: row.tank, product: row.product, productName: row.product_name,
    from: row.from_party, to: row.to_party, openedAt: row.opened_at, closedAt: row.closed_at, issuedAt: row.issued_at,
    gsv: { value: row.gsv, unit: row.gsv_unit }, nsv: { value: row.nsv, unit: row.nsv_unit }, weight: { value: row.weight, unit: row.weight_unit },
    voided: row.voided_seq === null ? null : { seq: row.voided_seq, at: row.voided_at ?? '', reason: row.void_reason ?? '' },
    replaces: row.replaces, replacedBy: row.replaced_by,
  }
}
