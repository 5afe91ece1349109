import { refuseUnverified, type GaugeSnapshot } from '../gauge/index.ts'
import { wording } from '../refusal/index.ts'
import { refuseSides, type Party, type Ticket } from '../ticket/index.ts'
import { transferQuantity } from '../transfer/index.ts'
import { versionInForce } from './effective-date.ts'
import { firstDifference } from './first-difference.ts'
import { gaugeKey } from './on-record.ts'
import { compared, inForce, same, type Before, type Recompute, type Recomputed } from './recompute.ts'

/**
 * A ticket made again from the ledger before it: what was moved, by the tank and product that it names, to the last
 * character; the versions in force at its gauges; when it was issued; terminal, parties and signers as on record; gauges verified for custody.
 * @source MPMS-12.1.1 transfer quantity
 * @source HOUSE verification
 */
export const recomputeTicket: Recompute<'ticket-posted'> = ({ at, body: { ticket } }, before) => {
  const found = [
    ...moved(ticket, before), ...inForce('tank', ticket.tank, ticket.opening.at, before), ...inForce('product', ticket.product, ticket.opening.at, before),
    ...inForce('tank', ticket.tank, ticket.closing.at, before), ...inForce('product', ticket.product, ticket.closing.at, before),
    ...same('issuedAt', ticket.issuedAt, at), ...onRecord(ticket, before), ...signers(ticket, before),
    ...verified(ticket.opening, 'opening', before), ...verified(ticket.closing, 'closing', before),
  ]
  const { software } = ticket
  if (found.length === 0 || software.core === before.software.core) return found
  const note = `computed by version ${software.version}, core ${software.core.slice(0, 12)}; this is ${before.software.version}, core ${before.software.core.slice(0, 12)}`
  return found.map((one) => ({ ...one, note }))
}

function moved({ kind, tank: named, product: ofProduct, opening, closing, lineFill, productName, result }: Ticket, before: Before): readonly Recomputed[] {
  const [tank, product] = [before.tank(named.seq), before.product(ofProduct.seq)]
  if (tank === undefined || product === undefined) return [{ place: 'tank and product', stands: `entries ${named.seq} and ${ofProduct.seq}`, gives: 'no tank or no product there' }]
  return [
    ...compared('result', result, transferQuantity({ kind, tank, product, opening, closing, ...(lineFill === undefined ? {} : { lineFill }) })),
    ...same('productName', productName, product.name),
  ]
}

/** The terminal and both parties, as they were in force at the opening gauge. */
function onRecord({ terminal, from, to, opening: { at } }: Ticket, { record }: Before): readonly Recomputed[] {
  const party = (code: string): Party | undefined => versionInForce(record.parties.get(code) ?? [], code, at)?.body.party
  return [
    firstDifference(terminal, versionInForce(record.terminals, '', at)?.body.terminal, ['terminal']),
    firstDifference(from, party(from.code), ['from']), firstDifference(to, party(to.code), ['to']),
  ].filter((one) => one !== undefined)
}

function signers({ terminal, from, to, signers: both }: Ticket, { record }: Before): readonly Recomputed[] {
  return [
    ...both.flatMap(({ identity, name, party, certificate }, place) => {
      const known = record.identities.get(identity)
      const found = firstDifference({ name, party, certificate }, known && { name: known.name, party: known.party, certificate: known.fingerprint }, [`signers, ${place + 1}`])
      return found === undefined ? [] : [found]
    }),
    ...refuseSides({ terminal: terminal.code, from: from.code, to: to.code, signers: both }).map((finding) => ({ place: 'signers', stands: 'accepted', gives: wording(finding) })),
  ]
}

/** What an automatic gauge was verified for before the ticket was posted. */
function verified(gauge: GaugeSnapshot, place: string, { record }: Before): readonly Recomputed[] {
  if (gauge.instrument === undefined) return []
  const standing = record.verifications.get(gaugeKey(gauge.tank, gauge.instrument.id)) ?? []
  return refuseUnverified(gauge, standing, place).map((finding) => ({ place: `${place}, instrument`, stands: 'accepted', gives: wording(finding) }))
}
