import type { Entry, EntryKind, EntryOf, Posting } from '../../core/ledger/index.ts'
import { printedUnit, printedUnits } from '../../core/units/index.ts'
import { COMMODITY_WORDS, INSTRUMENT_WORDS, OPERATIONS, STOCK_MOVEMENT_WORDS } from './contracts/index.ts'
import { NOBODY } from './desk/events.ts'

/** The name of a person by the id; undefined where nobody of that id is on record. */
export type NameOf = (id: string) => string | undefined

/** A line for people, by kind. A kind without one does not compile. */
const LINES: { readonly [K in EntryKind]: (body: EntryOf<K>['body'], nameOf: NameOf) => string } = {
  'terminal-set': ({ terminal }) => `Terminal ${terminal.code}, ${terminal.name}; the day closes at ${terminal.gaugeHour} (${terminal.zone})`,
  'tank-set': ({ tank, effectiveFrom }) => `Tank ${tank.code} from ${effectiveFrom}: capacity table ${tank.capacityTable.certificate} of ${tank.capacityTable.issuedOn}`,
  'product-set': ({ product, effectiveFrom }) => `Product ${product.code}, ${product.name}, from ${effectiveFrom}: ${COMMODITY_WORDS[product.commodity]}, base ${printedUnits(product.baseTemperature)}`,
  'party-set': ({ party }) => `Party ${party.code}, ${party.name}`,
  'identity-set': ({ identity }) => `Signing identity ${identity.id}: ${identity.name} for ${identity.party}, valid to ${identity.notAfter}`,
  'limit-set': ({ limit, effectiveFrom }) => `Limit for ${limit.product} from ${effectiveFrom}: ${limit.percent} of ${inWords(limit.base)} plus ${printedUnits(limit.fixed)}`,
  'inventory-measured': ({ snapshot, worksheet }) => `Inventory of ${snapshot.tank} at ${snapshot.at}: ${figure(worksheet.quantity.nsv)} of ${snapshot.product}`,
  'probe-zeroed': ({ tank, readAt, automatic, reason, modules }) => `Probe of ${tank} set to zero ${automatic ? 'by itself' : 'by hand'} at ${readAt}, ${modules.map(({ module, before, after }) => `${module} ${before} → ${after}`).join(', ')}: ${reason}`,
  'gauge-verified': ({ verification: { gauge, tank, at, use }, result: { verdict } }) => `Gauge ${gauge} of ${tank} verified for ${use} at ${at}: ${verdict} limits`,
  'instrument-set': ({ instrument, effectiveFrom }) => `Instrument ${instrument.code}, ${INSTRUMENT_WORDS[instrument.kind]}${instrument.tank === undefined ? '' : ` on ${instrument.tank}`}, from ${effectiveFrom}${instrument.inService ? '' : ': out of service'}`,
  'person-set': ({ person }) => `${person.name} of ${person.party}${person.active ? `: ${person.roles.join(', ') || 'no role'}` : ', no longer active'}`,
  'rules-set': ({ rules, effectiveFrom }) => `Desk rules from ${effectiveFrom}: ${rules.approval === 'two-people' ? 'who prepares does not approve' : 'one person may prepare and approve'}; locked after ${rules.idleMinutes} minutes`,
  'gauge-event': ({ event: { tank, gauge, at, event, message } }) => `${gauge ?? 'Gauge'} of ${tank} at ${at}, ${inWords(event)}: ${message}`,
  'desk-event': ({ event: { event, person, operation, detail } }, nameOf) => `${inWords(event)}: ${nameOf(person) ?? (person || NOBODY)}${operation === undefined ? '' : `, ${operationInWords(operation)}`}${detail === undefined ? '' : `; ${detailInWords(detail, nameOf)}`}`,
  'stock-moved': ({ movement: { kind, legs, reason } }) => `${STOCK_MOVEMENT_WORDS[kind]}: ${legs.map(({ code, product, nsv }) => `${code} ${figure(nsv)} of ${product.code}`).join(', ')}; ${reason}`,
  'stock-voided': ({ seq, reason }) => `Stock movement of entry ${seq} void: ${reason}`,
  'stock-allocated': ({ allocation: { of, tank, product, shares } }) => `Owners of ${product} in ${tank}${of === undefined ? '' : `, entry ${of}`}: ${shares.map(({ party, nsv }) => `${party} ${figure(nsv)}`).join(', ')}`,
  'period-opened': ({ period: { name, from, to } }) => `Period ${name} opened, ${from} to ${to}`,
  'period-closed': ({ seal: { period, closedBy, checks } }) => `Period ${period.name} closed by ${closedBy}${exceptions(checks.filter(({ holds }) => !holds).length)}`,
  'ticket-posted': ({ ticket }) => `Ticket ${ticket.number}: ${ticket.kind} of ${figure(ticket.result.moved.nsv)} of ${ticket.productName}, tank ${ticket.tank.code}${ticket.replaces === undefined ? '' : `; replaces ${ticket.replaces}`}`,
  'ticket-voided': ({ number, reason }) => `Ticket ${number} void: ${reason}`,
  'adjustment-posted': ({ tank, nsv, reason, approvedBy }) => `Adjustment of ${tank} by ${figure(nsv)}, approved by ${approvedBy}: ${reason}`,
}

/**
 * What an entry says, in one line and in words.
 * @param nameOf names of the people on record; without it their ids stand
 */
export function summaryOf(entry: Entry, nameOf: NameOf = unknown): string {
  return summary(entry, nameOf)
}

/** What an entry would say, in one line. */
export function summaryOfPosting(posting: Posting): string {
  return summary(posting, unknown)
}

function summary<K extends EntryKind>({ kind, body }: Pick<EntryOf<K>, 'kind' | 'body'>, nameOf: NameOf): string {
  return LINES[kind](body, nameOf)
}

function unknown(): undefined {
  return undefined
}

function figure({ value, unit }: { readonly value: string; readonly unit: string }): string {
  return `${value} ${printedUnit(unit)}`
}

function inWords(kind: string): string {
  return kind.replaceAll('-', ' ')
}

/** What somebody typed for an operation stays as it was typed. */
function operationInWords(operation: string): string {
  return Object.hasOwn(OPERATIONS, operation) ? inWords(operation) : operation
}

/** The detail of an event was written as it happened: whose passphrase by an id, figures as they are typed. */
function detailInWords(detail: string, nameOf: NameOf): string {
  return printedUnits(detail.replace(/\bthat of ([a-z0-9-]+)/, (whole, id: string) => (nameOf(id) === undefined ? whole : `that of ${nameOf(id)}`)))
}

function exceptions(count: number): string {
  return count === 0 ? '' : `, ${count} ${count === 1 ? 'exception' : 'exceptions'} signed off`
}
