import type { Kysely, SelectQueryBuilder } from 'kysely'
import { instantKey, isOfKind, type Entry, type EntryKind, type EntryOf } from '../../core/ledger/index.ts'
import { entryOf } from './entry-rows.ts'
import type { Schema } from './schema.ts'

/** What of the audit trail is wanted; whatever is left out admits everything. */
export interface TrailFilter {
  readonly kinds?: readonly EntryKind[] | undefined
  /** Code of a tank, gauge, product, party or period, number of a ticket, id of a person. */
  readonly subject?: string | undefined
  /** Part of the name that an entry bears, or of the id of who was at the desk. */
  readonly person?: string | undefined
  /** Part of the station's name. */
  readonly station?: string | undefined
  /** UTC instants, both included. */
  readonly from?: string | undefined; readonly to?: string | undefined
  /** Whatever else an entry must be. */
  readonly matches?: ((entry: Entry) => boolean) | undefined
}

/** A page of the audit trail, newest first. */
export interface TrailPage {
  readonly entries: readonly Entry[]
  /** Everything from this entry on was looked through; null when the beginning was reached. */
  readonly before: number | null
}

/** Rows are looked through in stretches of so many entries, and so many stretches at once at most: then it is asked whether to go on. */
const STRETCH = 2000
const STRETCHES = 20
/** Entries that have to be read to judge them, at once at most. */
const READ = 600

/**
 * The newest entries of the audit trail that are wanted and come before an entry. The cost follows what is shown: kinds,
 * subjects and times are found by index, the rest is looked for in a bounded stretch.
 */
export async function trailPage(db: Kysely<Schema>, filter: TrailFilter, limit: number, before = Number.MAX_SAFE_INTEGER): Promise<TrailPage> {
  const entries: Entry[] = []
  const span = await spanOf(db, filter)
  let [end, read] = [Math.min(before, span.last + 1), 0]
  for (let stretch = 0; stretch < STRETCHES; stretch += 1) {
    const last = await lastCandidate(db, filter, end)
    if (last === undefined || last < span.first) return { entries, before: null }
    const asked = filter.person === undefined && filter.station === undefined ? limit - entries.length + 1 : STRETCH
    const rows = await stretchUpTo(db, filter, last, asked)
    for (const { seq } of rows.filter((row) => isBy(row, filter))) {
      if (entries.length === limit || read === READ) return { entries, before: seq + 1 }
      const entry = entryOf(await db.selectFrom('entry').selectAll().where('seq', '=', seq).executeTakeFirstOrThrow())
      if (filter.matches !== undefined) read += 1
      if (filter.matches?.(entry) ?? true) entries.push(entry)
    }
    end = rows.length < asked ? last - STRETCH + 1 : rows.at(-1)?.seq ?? last
    if (end <= 1) return { entries, before: null }
  }
  return { entries, before: end }
}

interface Row { readonly seq: number; readonly by: string; readonly person: string | null; readonly station: string | null }

/** Between which entries the wanted times lie. */
async function spanOf(db: Kysely<Schema>, { from, to }: TrailFilter): Promise<{ readonly first: number; readonly last: number }> {
  if (from === undefined && to === undefined) {
    const row = await db.selectFrom('trail').select('seq').orderBy('seq', 'desc').limit(1).executeTakeFirst()
    return { first: 1, last: row?.seq ?? 0 }
  }
  const row = await within(db.selectFrom('trail'), { from, to }).select((eb) => [eb.fn.min('seq').as('first'), eb.fn.max('seq').as('last')]).executeTakeFirst()
  return { first: Number(row?.first ?? 1), last: Number(row?.last ?? 0) }
}

/** The last entry before one that the indexes admit. */
async function lastCandidate(db: Kysely<Schema>, { kinds, subject }: TrailFilter, end: number): Promise<number | undefined> {
  const lasts: (number | undefined)[] = [end - 1]
  if (kinds !== undefined) {
    const each = await Promise.all(kinds.map((kind) => db.selectFrom('entry').select('seq').where('kind', '=', kind).where('seq', '<', end).orderBy('seq', 'desc').limit(1).executeTakeFirst()))
    lasts.push(greatest(each.map((row) => row?.seq)))
  }
  if (subject !== undefined) {
    const each = await Promise.all((['trail', 'trail_about'] as const).map((table) => db.selectFrom(table).select('seq').where('subject', '=', subject).where('seq', '<', end).orderBy('seq', 'desc').limit(1).executeTakeFirst()))
    lasts.push(greatest(each.map((row) => row?.seq)))
  }
  const known = lasts.filter((last) => last !== undefined)
  return known.length < lasts.length ? undefined : Math.min(...known)
}

function greatest(seqs: readonly (number | undefined)[]): number | undefined {
  const known = seqs.filter((seq) => seq !== undefined)
  return known.length === 0 ? undefined : Math.max(...known)
}

async function stretchUpTo(db: Kysely<Schema>, filter: TrailFilter, last: number, limit: number): Promise<readonly Row[]> {
  const { kinds, subject } = filter
  let query = within(db.selectFrom('trail'), filter).where('seq', '<=', last).where('seq', '>', last - STRETCH)
  if (kinds !== undefined) query = query.where('kind', 'in', [...kinds])
  if (subject !== undefined) {
    query = query.where((eb) => eb.or([
      eb('subject', '=', subject), eb('seq', 'in', eb.selectFrom('trail_about').select('trail_about.seq').where('trail_about.subject', '=', subject).where('trail_about.seq', '<=', last).where('trail_about.seq', '>', last - STRETCH)),
    ]))
  }
  return query.select(['seq', 'by', 'person', 'station']).orderBy('seq', 'desc').limit(limit).execute()
}

function within<O>(query: SelectQueryBuilder<Schema, 'trail', O>, { from, to }: Pick<TrailFilter, 'from' | 'to'>): SelectQueryBuilder<Schema, 'trail', O> {
  let narrowed = query
  if (from !== undefined) narrowed = narrowed.where('at_order', '>=', instantKey(from))
  if (to !== undefined) narrowed = narrowed.where('at_order', '<=', instantKey(to))
  return narrowed
}

function isBy({ by, person, station }: Row, filter: TrailFilter): boolean {
  return holds([by, person], filter.person) && holds([station], filter.station)
}

function holds(texts: readonly (string | null)[], part: string | undefined): boolean {
  return part === undefined || texts.some((text) => text?.toLowerCase().includes(part.toLowerCase()) ?? false)
}

/** Alarms and faults of gauges that stand: the event that raised each. */
export async function standingAlarms(db: Kysely<Schema>): Promise<readonly EntryOf<'gauge-event'>[]> {
  const rows = await db.selectFrom('alarm').innerJoin('entry', 'entry.seq', 'alarm.raised_seq').selectAll('entry').select(['alarm.raised_order', 'alarm.cleared_order', 'alarm.cleared_seq', 'alarm.raised_seq'])
    .where((eb) => eb.or([eb('alarm.cleared_order', 'is', null), eb('alarm.raised_order', '>=', eb.ref('alarm.cleared_order'))])).orderBy('alarm.raised_order', 'desc').execute()
  return rows.filter((row) => row.cleared_order === null || row.cleared_order !== row.raised_order || Number(row.raised_seq) > Number(row.cleared_seq))
    .map(({ seq, kind, at, by, body, previous, hash, origin }) => entryOf({ seq, kind, at, by, body, previous, hash, origin })).filter((entry) => isOfKind(entry, 'gauge-event'))
}
