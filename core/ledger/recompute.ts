import type { Product } from '../quantity/index.ts'
import { wording, type Outcome } from '../refusal/index.ts'
import type { Tank } from '../tank/index.ts'
import type { Software, Version } from '../ticket/index.ts'
import type { Entry, EntryKind, EntryOf } from './entry.ts'
import { firstDifference } from './first-difference.ts'
import { entryInForce, type OnRecord } from './on-record.ts'

/** Something that an entry states and the ledger before it does not give. */
export interface Recomputed {
  /** What of the entry: `result, opening, NSV, value`. */
  readonly place: string
  /** What stands in the entry. */
  readonly stands: string
  /** What the ledger gives. */
  readonly gives: string
  /** Why it may be so: another version of the software made it. */
  readonly note?: string
}

/** The ledger before an entry, as far as the entry is computed from it. */
export interface Before {
  readonly record: OnRecord
  /** The tank that an entry set; undefined when it set none. */
  tank(seq: number): Tank | undefined
  product(seq: number): Product | undefined
  /** The software that recomputes. */
  readonly software: Software
}

/** How an entry of one kind is made again from the ledger before it. */
export type Recompute<K extends EntryKind> = (entry: EntryOf<K>, before: Before) => readonly Recomputed[]

/** The numbers of the entries that set the tanks and products by which an entry was computed. */
export function versionsNamed(entry: Entry, record: OnRecord): readonly number[] {
  switch (entry.kind) {
    case 'ticket-posted': return [entry.body.ticket.tank.seq, entry.body.ticket.product.seq]
    case 'inventory-measured': return [entry.body.tank.seq, entry.body.product.seq]
    case 'gauge-verified': return [entry.body.tank.seq]
    case 'probe-zeroed': return [entryInForce(record, 'tank', entry.body.tank, entry.body.readAt)].filter((seq) => seq !== undefined)
    case 'stock-moved': return entry.body.movement.legs.flatMap(({ tank, product }) => (tank === undefined ? [product.seq] : [tank.seq, product.seq]))
    default: return []
  }
}

/** What stands against what comes out: the first difference, or what was refused. */
export function compared(place: string, stands: unknown, gives: Outcome<unknown>): readonly Recomputed[] {
  if (!gives.ok) return gives.findings.map((finding) => ({ place, stands: 'accepted', gives: wording(finding) }))
  const found = firstDifference(stands, gives.value, [place])
  return found === undefined ? [] : [found]
}

/** A difference where two texts are not the same. */
export function same(place: string, stands: string, gives: string): readonly Recomputed[] {
  return stands === gives ? [] : [{ place, stands, gives }]
}

/** The version that an entry names is the one that was in force at an instant. */
export function inForce(kind: 'tank' | 'product', version: Version, at: string, { record }: Before): readonly Recomputed[] {
  const seq = entryInForce(record, kind, version.code, at)
  return same(`${kind} in force at ${at}`, `entry ${version.seq}`, seq === undefined ? `no ${version.code} was in force` : `entry ${seq}`)
}
