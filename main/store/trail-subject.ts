import type { Entry, EntryKind, EntryOf } from '../../core/ledger/index.ts'

/** What an entry is about, as the audit trail is searched by it. A kind without a row does not compile. */
const SUBJECTS: { readonly [K in EntryKind]: (body: EntryOf<K>['body']) => string } = {
  'terminal-set': ({ terminal }) => terminal.code,
  'tank-set': ({ tank }) => tank.code,
  'product-set': ({ product }) => product.code,
  'party-set': ({ party }) => party.code,
  'identity-set': ({ identity }) => identity.id,
  'limit-set': ({ limit }) => limit.product,
  'instrument-set': ({ instrument }) => instrument.code,
  'person-set': ({ person }) => person.id,
  'rules-set': () => 'desk rules',
  'inventory-measured': ({ snapshot }) => snapshot.tank,
  'gauge-verified': ({ verification }) => verification.tank,
  'probe-zeroed': ({ tank }) => tank,
  'gauge-event': ({ event }) => event.tank,
  'desk-event': ({ event }) => event.person,
  'ticket-posted': ({ ticket }) => ticket.number,
  'ticket-voided': ({ number }) => number,
  'adjustment-posted': ({ tank }) => tank,
  'stock-moved': ({ movement }) => movement.legs[0]?.code ?? '',
  'stock-voided': ({ seq }) => `entry ${seq}`,
  'stock-allocated': ({ allocation }) => allocation.tank,
  'period-opened': ({ period }) => period.name,
  'period-closed': ({ seal }) => seal.period.name,
}

function subject<K extends EntryKind>({ kind, body }: Pick<EntryOf<K>, 'kind' | 'body'>): string {
  return SUBJECTS[kind](body)
}

/** What else an entry is about: the tank of a ticket, the ticket that it replaces, the other tanks of a stock movement, the gauge of a verification. */
export function alsoAbout(entry: Entry): readonly string[] {
  switch (entry.kind) {
    case 'ticket-posted': return [entry.body.ticket.tank.code, ...(entry.body.ticket.replaces === undefined ? [] : [entry.body.ticket.replaces])]
    case 'stock-moved': return [...new Set(entry.body.movement.legs.map(({ code }) => code))].filter((code) => code !== subjectOf(entry))
    case 'gauge-verified': return [entry.body.verification.gauge]
    case 'gauge-event': return entry.body.event.gauge === undefined ? [] : [entry.body.event.gauge]
    case 'instrument-set': return entry.body.instrument.tank === undefined ? [] : [entry.body.instrument.tank]
    default: return []
  }
}

/** Everything that an entry is about, its subject first. */
export function aboutOf(entry: Entry): readonly string[] {
  return [subjectOf(entry), ...alsoAbout(entry)].filter((subject) => subject !== '')
}

/** Code of the tank, ticket, product, party, person or period that an entry is about. */
export function subjectOf(entry: Entry): string {
  return subject(entry)
}
