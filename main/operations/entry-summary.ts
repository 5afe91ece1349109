import type { Entry, EntryKind, EntryOf, Posting } from '../../core/ledger/index.ts'

/** A line for people, by kind. A kind without one does not compile. */
const LINES: { readonly [K in EntryKind]: (body: EntryOf<K>['body']) => string } = {
  'terminal-set': ({ terminal }) => `Terminal ${terminal.code}, ${terminal.name}; the day closes at ${terminal.gaugeHour} (${terminal.zone})`,
  'tank-set': ({ tank, effectiveFrom }) => `Tank ${tank.code} from ${effectiveFrom}: capacity table ${tank.capacityTable.certificate} of ${tank.capacityTable.issuedOn}`,
  'product-set': ({ product, effectiveFrom }) => `Product ${product.code}, ${product.name}, from ${effectiveFrom}: ${product.commodity}, base ${product.baseTemperature}`,
  'party-set': ({ party }) => `Party ${party.code}, ${party.name}`,
  'identity-set': ({ identity }) => `Signing identity ${identity.id}: ${identity.name} for ${identity.party}, valid to ${identity.notAfter}`,
  'limit-set': ({ limit, effectiveFrom }) => `Limit for ${limit.product} from ${effectiveFrom}: ${limit.percent} of ${limit.base} plus ${limit.fixed}`,
  'inventory-measured': ({ snapshot, worksheet }) => `Inventory of ${snapshot.tank} at ${snapshot.at}: ${worksheet.quantity.nsv.value} ${worksheet.quantity.nsv.unit} of ${snapshot.product}`,
  'probe-zeroed': ({ tank, readAt, automatic, reason, modules }) => `Probe of ${tank} set to zero ${automatic ? 'by itself' : 'by hand'} at ${readAt}, ${modules.map(({ module, before, after }) => `${module} ${before} → ${after}`).join(', ')}: ${reason}`,
  'gauge-verified': ({ verification: { gauge, tank, at, use }, result: { verdict } }) => `Gauge ${gauge} of ${tank} verified for ${use} at ${at}: ${verdict} limits`,
  'instrument-set': ({ instrument, effectiveFrom }) => `Instrument ${instrument.code}, ${instrument.kind}${instrument.tank === undefined ? '' : ` on ${instrument.tank}`}, from ${effectiveFrom}${instrument.inService ? '' : ': out of service'}`,
  'person-set': ({ person }) => `${person.name} of ${person.party}${person.active ? `: ${person.roles.join(', ') || 'no role'}` : ', no longer active'}`,
  'rules-set': ({ rules, effectiveFrom }) => `Desk rules from ${effectiveFrom}: ${rules.approval === 'two-people' ? 'who prepares does not approve' : 'one person may prepare and approve'}; locked after ${rules.idleMinutes} minutes`,
  'gauge-event': ({ event: { tank, gauge, at, event, message } }) => `${gauge ?? 'Gauge'} of ${tank} at ${at}, ${event.replaceAll('-', ' ')}: ${message}`,
  'desk-event': ({ event: { event, person, operation, detail } }) => `${event.replaceAll('-', ' ')}: ${person}${operation === undefined ? '' : `, ${operation}`}${detail === undefined ? '' : `; ${detail}`}`,
  'stock-moved': ({ movement: { kind, legs, reason } }) => `${kind.replaceAll('-', ' ')}: ${legs.map(({ code, product, nsv }) => `${code} ${nsv.value} ${nsv.unit} of ${product.code}`).join(', ')}; ${reason}`,
  'stock-voided': ({ seq, reason }) => `Stock movement of entry ${seq} void: ${reason}`,
  'stock-allocated': ({ allocation: { of, tank, product, shares } }) => `Owners of ${product} in ${tank}${of === undefined ? '' : `, entry ${of}`}: ${shares.map(({ party, nsv }) => `${party} ${nsv.value} ${nsv.unit}`).join(', ')}`,
  'period-opened': ({ period: { name, from, to } }) => `Period ${name} opened, ${from} to ${to}`,
  'period-closed': ({ seal: { period, closedBy, checks } }) => `Period ${period.name} closed by ${closedBy}${checks.some(({ holds }) => !holds) ? `, ${checks.filter(({ holds }) => !holds).length} exceptions signed off` : ''}`,
  'ticket-posted': ({ ticket }) => `Ticket ${ticket.number}: ${ticket.kind} of ${ticket.result.moved.nsv.value} ${ticket.result.moved.nsv.unit} of ${ticket.productName}, tank ${ticket.tank.code}${ticket.replaces === undefined ? '' : `; replaces ${ticket.replaces}`}`,
  'ticket-voided': ({ number, reason }) => `Ticket ${number} void: ${reason}`,
  'adjustment-posted': ({ tank, nsv, reason, approvedBy }) => `Adjustment of ${tank} by ${nsv.value} ${nsv.unit}, approved by ${approvedBy}: ${reason}`,
}

/** What an entry says, in one line. */
export function summaryOf(entry: Entry): string {
  return summary(entry)
}

/** What an entry would say, in one line. */
export function summaryOfPosting(posting: Posting): string {
  return summary(posting)
}

function summary<K extends EntryKind>({ kind, body }: Pick<EntryOf<K>, 'kind' | 'body'>): string {
  return LINES[kind](body)
}
