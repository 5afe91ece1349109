import { changedFields, trailGroupOf, type Entry, type EntryKind } from '../../core/ledger/index.ts'
import { aboutOf, type LedgerStore } from '../store/index.ts'
import type { Changed, Place } from './contracts/audit-trail.ts'

type Trail = Pick<LedgerStore, 'trail'>

/** A ledger has one of each. */
const ALONE: ReadonlySet<EntryKind> = new Set(['terminal-set', 'rules-set'])

/** What an entry changed in the set-up; null where it sets nothing up. */
export async function changedBy(entry: Entry, store: Trail): Promise<Changed | null> {
  if (trailGroupOf(entry.kind) !== 'set-up') return null
  const since = await versionBefore(entry, store)
  return since === undefined ? { since: null, fields: [] } : { since: placeOf(since), fields: [...changedFields(since.body, entry.body)] }
}

/** The entry before one that set the same thing, in the order of posting. */
async function versionBefore(entry: Entry, store: Trail): Promise<Entry | undefined> {
  const { kind, seq } = entry
  const subject = ALONE.has(kind) ? undefined : aboutOf(entry)[0]
  const isSameThing = (other: Entry): boolean => subject === undefined || aboutOf(other)[0] === subject
  for (let before: number | null = seq; before !== null;) {
    const page = await store.trail({ kinds: [kind], subject, matches: isSameThing }, 1, before)
    if (page.entries[0] !== undefined) return page.entries[0]
    before = page.before
  }
  return undefined
}

/** The entry that another voids, replaces or corrects. */
export async function correctedBy(entry: Entry, store: Pick<LedgerStore, 'entry' | 'registerLine'>): Promise<Place | null> {
  const seq = await seqCorrected(entry, store)
  const corrected = seq === undefined ? undefined : await store.entry(seq)
  return corrected === undefined ? null : placeOf(corrected)
}

async function seqCorrected(entry: Entry, store: Pick<LedgerStore, 'registerLine'>): Promise<number | undefined> {
  const ofTicket = async (number: string | undefined): Promise<number | undefined> => (number === undefined ? undefined : (await store.registerLine(number))?.seq)
  switch (entry.kind) {
    case 'stock-voided': return entry.body.seq
    case 'ticket-voided': return ofTicket(entry.body.number)
    case 'ticket-posted': return entry.body.late?.corrects ?? ofTicket(entry.body.ticket.replaces)
    case 'adjustment-posted': case 'stock-moved': return entry.body.late?.corrects
    default: return undefined
  }
}

function placeOf({ seq, at, by }: Entry): Place {
  return { seq, at, by }
}
