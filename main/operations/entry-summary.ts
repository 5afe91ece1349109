import type { Entry, EntryKind, EntryOf } from '../../core/ledger/index.ts'

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
  'ticket-posted': ({ ticket }) => `Ticket ${ticket.number}: ${ticket.kind} of ${ticket.result.moved.nsv.value} ${ticket.result.moved.nsv.unit} of ${ticket.productName}, tank ${ticket.tank.code}${ticket.replaces === undefined ? '' : `; replaces ${ticket.replaces}`}`,
  'ticket-voided': ({ number, reason }) => `Ticket ${number} void: ${reason}`,
  'adjustment-posted': ({ tank, nsv, reason, approvedBy }) => `Adjustment of ${tank} by ${nsv.value} ${nsv.unit}, approved by ${approvedBy}: ${reason}`,
}

/** What an entry says, in one line. */
export function summaryOf(entry: Entry): string {
  return summary(entry)
}

function summary<K extends EntryKind>({ kind, body }: Pick<EntryOf<K>, 'kind' | 'body'>): string {
  return LINES[kind](body)
}
