import type { Entry, EntryKind, EntryOf } from './entry.ts'
import { recomputeInventory, recomputeVerification, recomputeZero } from './recompute-gauges.ts'
import { recomputePeriod } from './recompute-period.ts'
import { recomputeStock } from './recompute-stock.ts'
import { recomputeTicket } from './recompute-ticket.ts'
import type { Before, Recompute, Recomputed } from './recompute.ts'

/** Nothing in it was computed. */
const stated = null

/** How each kind of entry is made again from the ledger before it. A kind without a row does not compile. */
const RECOMPUTE: { readonly [K in EntryKind]: Recompute<K> | null } = {
  'terminal-set': stated,
  'tank-set': stated,
  'product-set': stated,
  'party-set': stated,
  'identity-set': stated,
  'limit-set': stated,
  'instrument-set': stated,
  'person-set': stated,
  'rules-set': stated,
  'ticket-voided': stated,
  'adjustment-posted': stated,
  'stock-voided': stated,
  'stock-allocated': stated,
  'period-opened': stated,
  'gauge-event': stated,
  'desk-event': stated,
  'inventory-measured': recomputeInventory,
  'gauge-verified': recomputeVerification,
  'probe-zeroed': recomputeZero,
  'ticket-posted': recomputeTicket,
  'stock-moved': recomputeStock,
  'period-closed': recomputePeriod,
}

/** Whether anything in entries of a kind is computed from the ledger before them. */
export function isComputed(kind: EntryKind): boolean {
  return RECOMPUTE[kind] !== null
}

/**
 * Everything in which an entry is not what the ledger before it gives, to the last character; empty where it is, and for
 * kinds in which nothing is computed. The ledger alone decides: no clock, no file.
 * @param entry an entry as it was read
 * @param before the ledger before it
 * @source HOUSE verification
 */
export function recomputeEntry(entry: Entry, before: Before): readonly Recomputed[] {
  return recompute(entry, before)
}

function recompute<K extends EntryKind>(entry: EntryOf<K>, before: Before): readonly Recomputed[] {
  return RECOMPUTE[entry.kind]?.(entry, before) ?? []
}
