import type { EntryKind } from './entry.ts'

/** What the audit trail is read by. */
export const TRAIL_GROUPS = ['set-up', 'tickets', 'stock', 'periods', 'gauges', 'alarms', 'desk'] as const
export type TrailGroup = (typeof TRAIL_GROUPS)[number]

/** The group of each kind of entry. A kind without one does not compile. */
const GROUPS: { readonly [K in EntryKind]: TrailGroup } = {
  'terminal-set': 'set-up',
  'tank-set': 'set-up',
  'product-set': 'set-up',
  'party-set': 'set-up',
  'identity-set': 'set-up',
  'limit-set': 'set-up',
  'instrument-set': 'set-up',
  'person-set': 'set-up',
  'rules-set': 'set-up',
  'ticket-posted': 'tickets',
  'ticket-voided': 'tickets',
  'inventory-measured': 'stock',
  'adjustment-posted': 'stock',
  'stock-moved': 'stock',
  'stock-voided': 'stock',
  'stock-allocated': 'stock',
  'period-opened': 'periods',
  'period-closed': 'periods',
  'gauge-verified': 'gauges',
  'probe-zeroed': 'gauges',
  'gauge-event': 'alarms',
  'desk-event': 'desk',
}

/** In which part of the audit trail a kind of entry stands. */
export function trailGroupOf(kind: EntryKind): TrailGroup {
  return GROUPS[kind]
}

/** The kinds of entries in a part of the audit trail. */
export function kindsOfGroup(group: TrailGroup): readonly EntryKind[] {
  return KINDS.filter((kind) => GROUPS[kind] === group)
}

const KINDS = Object.keys(GROUPS) as readonly EntryKind[]
