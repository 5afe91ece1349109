import { chainEntry, GENESIS, sha256Hex, stockBody, versionHash, type Entry, type EntryOf, type Identity, type Late, type Posting } from '../../core/ledger/index.ts'
import type { Product, Worksheet } from '../../core/quantity/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { makeTicket, ticketNumber, type Party, type Terminal, type Ticket, type Version } from '../../core/ticket/index.ts'
import { stockMovement, type TransferResult } from '../../core/transfer/index.ts'
import { must } from './must.ts'
import { aClosingGauge, anOpeningGauge, aProduct } from './snapshots.ts'
import { aTank } from './tanks.ts'

/** Postings made by hand, for tests of the book and the store: their quantities are stated, not computed. */

export function aTerminal(parts: Partial<Terminal> = {}): Terminal {
  return { code: 'CPT', name: 'Calder Point Terminal', zone: 'Europe/Lisbon', gaugeHour: '06:00', ...parts }
}

export function aParty(parts: Partial<Party> = {}): Party {
  return { code: 'HARBOUR', name: 'Harbour Storage', ...parts }
}

/** A small tank, so that a ledger of tests stays small. */
export function aSmallTank(parts: Partial<Tank> = {}): Tank {
  const tank = aTank(parts)
  return { ...tank, capacityTable: { ...tank.capacityTable, rows: [['0', '0'], ['12000', '2400']] } }
}

export function aWorksheet(nsv: string): Worksheet {
  const volume = { value: nsv, unit: 'm3' }
  const none = { value: '0.000', unit: 'm3' }
  const tonnes = { value: '0.000', unit: 't' }
  return {
    lines: [{ symbol: 'NSV', name: 'Net standard volume', value: nsv, unit: 'm3', unrounded: nsv, rounding: 'as written', formula: '', clause: 'HOUSE', from: [], notes: [] }],
    quantity: {
      tov: volume, fw: none, ctsh: '1.00000', fra: none, gov: volume, baseDensity: { value: '845.3', unit: 'kg/m3' }, ctl: '1.00000', cpl: '1.00000', ctpl: '1.00000',
      gsv: volume, csw: '1.00000', nsv: volume, swVolume: none, tcv: volume, mass: tonnes, weight: tonnes,
    },
    exceptions: [], subgroup: 'crude', standard: 'API MPMS 11.1-2004, crude oils',
  }
}

function aResult(kind: 'receipt' | 'delivery', opening: string, closing: string, change: string): TransferResult {
  const none = { value: '0.000', unit: 'm3' }
  const tonnes = { value: '0.000', unit: 't' }
  const of = (nsv: string): TransferResult['moved'] => ({ gsv: { value: nsv, unit: 'm3' }, nsv: { value: nsv, unit: 'm3' }, mass: tonnes, weight: tonnes, water: none })
  return {
    kind, opening: aWorksheet(opening), closing: aWorksheet(closing), lines: [],
    tankChange: of(change), moved: of(change.replace('-', '')), exceptions: [],
  }
}

export interface TicketFigures {
  readonly number: string
  readonly kind?: 'receipt' | 'delivery'
  /** Net standard volume at both gauges and its change [m³]. */
  readonly opening?: string; readonly closing?: string; readonly change?: string
  readonly from?: string; readonly to?: string
  readonly tank?: Version; readonly product?: Version
  readonly replaces?: string; readonly remarks?: string
  readonly head?: { readonly seq: number; readonly hash: string }
}

const someVersion = (code: string): Version => ({ code, seq: 1, hash: '0'.repeat(64) })

export function aTicket(figures: TicketFigures): Ticket {
  const { number, kind = 'receipt', opening = '100.000', closing = '150.000', change = '50.000', from = '2026-03-14T06:10:00Z', to = '2026-03-14T18:40:00Z' } = figures
  const signer = (identity: string, role: 'terminal' | 'counterparty'): Ticket['signers'][0] => ({ identity, name: identity, party: 'HARBOUR', role, certificate: 'c'.repeat(64) })
  return makeTicket({
    number, issuedAt: to, terminal: aTerminal(), from: aParty({ code: 'SHIP' }), to: aParty(),
    tank: figures.tank ?? someVersion('T-101'), product: figures.product ?? someVersion('CRUDE'), productName: 'Light crude',
    opening: anOpeningGauge({ at: from }), closing: aClosingGauge({ at: to }), result: aResult(kind, opening, closing, change),
    replaces: figures.replaces, remarks: figures.remarks,
    signers: [signer('m-duarte', 'terminal'), signer('a-reis', 'counterparty')],
    software: { name: 'Dipledger', version: '0.1.0', core: 'd'.repeat(64) },
    ledger: { seq: figures.head?.seq ?? 0, head: figures.head?.hash ?? GENESIS },
  })
}

const AT = '2026-03-14T19:00:00Z'
const BY = 'M. Duarte'

export function ticketPosting(ticket: Ticket, document: Uint8Array, at = AT): Extract<Posting, { kind: 'ticket-posted' }> {
  const sha256 = sha256Hex(document)
  return { kind: 'ticket-posted', at, by: BY, body: { ticket, document: { sha256, bytes: document.length, revisions: [sha256] } } }
}

export function voidPosting(number: string, reason = 'Closing level read from the wrong tank', at = AT): Extract<Posting, { kind: 'ticket-voided' }> {
  return { kind: 'ticket-voided', at, by: BY, body: { number, reason } }
}

export function adjustmentPosting(nsv: string, effectiveAt = '2026-03-15T06:00:00Z'): Extract<Posting, { kind: 'adjustment-posted' }> {
  return { kind: 'adjustment-posted', at: AT, by: BY, body: { tank: 'T-101', product: 'CRUDE', effectiveAt, nsv: { value: nsv, unit: 'm3' }, reason: 'Line drained into the slop tank', approvedBy: 'I. Nunes' } }
}

export function tankPosting(tank: Tank = aSmallTank(), effectiveFrom = '2026-01-01T00:00:00Z'): Extract<Posting, { kind: 'tank-set' }> {
  return { kind: 'tank-set', at: AT, by: BY, body: { tank, effectiveFrom } }
}

export function productPosting(product: Product = aProduct(), effectiveFrom = '2026-01-01T00:00:00Z'): Extract<Posting, { kind: 'product-set' }> {
  return { kind: 'product-set', at: AT, by: BY, body: { product, effectiveFrom } }
}

export function identityPosting(identity: Identity): Extract<Posting, { kind: 'identity-set' }> {
  return { kind: 'identity-set', at: '2026-03-01T08:00:00Z', by: 'set-up', body: { identity } }
}

export function terminalPosting(): Extract<Posting, { kind: 'terminal-set' }> {
  return { kind: 'terminal-set', at: AT, by: BY, body: { terminal: aTerminal() } }
}

export function inventoryPosting(nsv: string, at: string, tank: Version, product: Version): Extract<Posting, { kind: 'inventory-measured' }> {
  return { kind: 'inventory-measured', at: AT, by: BY, body: { snapshot: anOpeningGauge({ at, tank: tank.code, product: product.code }), worksheet: aWorksheet(nsv), tank, product } }
}

/** A desk that names itself. */
export const A_DESK = { station: 'jetty-desk', person: 'm-duarte' } as const

/** Product in T-101 that changed hands where it lies. */
export function allocationPosting(nsv = '25.000'): Extract<Posting, { kind: 'stock-allocated' }> {
  const share = (party: string, value: string): { party: string; nsv: { value: string; unit: string } } => ({ party, nsv: { value, unit: 'm3' } })
  return {
    kind: 'stock-allocated', at: AT, by: BY, origin: A_DESK,
    body: { allocation: { tank: 'T-101', product: 'CRUDE', at: '2026-03-17T06:00:00Z', shares: [share('HARBOUR', nsv), share('SHIP', `-${nsv}`)], reason: 'Sold in place' } },
  }
}

export function stockVoidPosting(seq: number, late?: Late): Extract<Posting, { kind: 'stock-voided' }> {
  return { kind: 'stock-voided', at: AT, by: BY, body: { seq, reason: 'The gauges are those of another day', ...(late !== undefined && { late }) } }
}

/** The line to the jetty, packed with product whose contents were stated: 12 m³ where there was nothing. */
export function lineFillPosting(product: Version): Extract<Posting, { kind: 'stock-moved' }> {
  const opening = { at: '2026-03-17T06:30:00Z', net: '0 m3' }
  const result = must(stockMovement({ kind: 'line-fill', line: { code: 'JETTY-1', product: aProduct(), opening, closing: { at: '2026-03-17T07:00:00Z', net: '12 m3' } } }))
  return { kind: 'stock-moved', at: AT, by: BY, origin: A_DESK, body: { movement: stockBody(result, [{ product }], { reason: 'Line packed before the next receipt' }) } }
}

export function periodPosting(name = '2026-03', from = '2026-03-01T06:00:00Z', to = '2026-04-01T05:00:00Z'): Extract<Posting, { kind: 'period-opened' }> {
  return { kind: 'period-opened', at: AT, by: BY, body: { period: { name, from, to } } }
}

export function alarmPosting(event: 'alarm' | 'alarm-cleared' | 'fault' | 'fault-cleared' = 'alarm', at = '2026-03-17T05:30:00Z', tank = 'T-101'): Extract<Posting, { kind: 'gauge-event' }> {
  return { kind: 'gauge-event', at: AT, by: BY, body: { event: { tank, gauge: 'LT-101', at, event, message: 'High level', source: 'hand' } } }
}

/** The version that an entry set, as tickets name it. */
export function versionFrom(entry: EntryOf<'tank-set'> | EntryOf<'product-set'>): Version {
  const thing = entry.kind === 'tank-set' ? entry.body.tank : entry.body.product
  return { code: thing.code, seq: entry.seq, hash: versionHash(thing) }
}

/** Postings placed in a chain from its beginning. */
export function chained(postings: readonly Posting[]): readonly Entry[] {
  const entries: Entry[] = []
  for (const posting of postings) {
    const last = entries.at(-1)
    entries.push(chainEntry(posting, { seq: (last?.seq ?? 0) + 1, previous: last?.hash ?? GENESIS }))
  }
  return entries
}

export { ticketNumber }
