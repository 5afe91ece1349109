import type { Kysely } from 'kysely'
import { instantKey, type Entry, type EntryOf } from '../../core/ledger/index.ts'
import { insertRow } from './insert-rows.ts'
import type { Schema } from './schema.ts'
import { alsoAbout, subjectOf } from './trail-subject.ts'

/** Who did what, when, from which station, and what it was about. */
export async function projectTrail(db: Kysely<Schema>, entry: Entry, legs: number): Promise<void> {
  const { seq, kind, at, by, origin } = entry
  await insertRow(db, 'trail', { seq, kind, at_order: instantKey(at), by, person: origin?.person ?? null, station: origin?.station ?? null, subject: subjectOf(entry) })
  const also = entry.kind === 'ticket-voided' ? await tankOf(db, entry) : entry.kind === 'stock-voided' ? await placesOf(db, entry) : alsoAbout(entry)
  for (const [place, subject] of also.entries()) await insertRow(db, 'trail_about', { id: seq * legs + place, seq, subject })
}

/** A void names its ticket only; it is about the ticket's tank too. */
async function tankOf(db: Kysely<Schema>, { body: { number } }: EntryOf<'ticket-voided'>): Promise<readonly string[]> {
  const row = await db.selectFrom('ticket').select('tank').where('number', '=', number).executeTakeFirst()
  return row === undefined ? [] : [row.tank]
}

/** A void of a stock movement names its entry only; it is about every tank and line of it. */
async function placesOf(db: Kysely<Schema>, { body: { seq } }: EntryOf<'stock-voided'>): Promise<readonly string[]> {
  const rows = await db.selectFrom('movement').select('tank').where('seq', '=', seq).orderBy('id').execute()
  return [...new Set(rows.map(({ tank }) => tank))]
}

/** An alarm or fault of a gauge: when it was last raised, and when last cleared. Other events change nothing in it. */
export async function projectAlarm(db: Kysely<Schema>, { seq, body: { event } }: EntryOf<'gauge-event'>): Promise<void> {
  if (event.event === 'setting-changed' || event.event === 'note') return
  const kind = event.event.startsWith('alarm') ? 'alarm' : 'fault'
  const raises = event.event === kind
  const order = instantKey(event.at)
  const gauge = event.gauge ?? ''
  const before = await db.selectFrom('alarm').selectAll().where('tank', '=', event.tank).where('gauge', '=', gauge).where('kind', '=', kind).executeTakeFirst()
  if (before === undefined) {
    await insertRow(db, 'alarm', {
      seq, tank: event.tank, gauge, kind, raised_seq: raises ? seq : null, raised_order: raises ? order : null, cleared_seq: raises ? null : seq, cleared_order: raises ? null : order,
    })
    return
  }
  // an event that is entered late changes nothing where a later one is known
  const known = raises ? before.raised_order : before.cleared_order
  if (known !== null && known > order) return
  await db.updateTable('alarm').set(raises ? { raised_seq: seq, raised_order: order } : { cleared_seq: seq, cleared_order: order }).where('seq', '=', before.seq).execute()
}
