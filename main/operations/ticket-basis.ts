import { parseInstant, type Instant } from '../../core/gauge/index.ts'
import type { Product } from '../../core/quantity/index.ts'
import { accepted, allOf, optional, refused, andThen, type Finding, type Outcome } from '../../core/refusal/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { refuseReplacement, type Party, type Terminal } from '../../core/ticket/index.ts'
import { transferQuantity, type TransferResult } from '../../core/transfer/index.ts'
import type { LedgerStore } from '../store/index.ts'
import type { ParsedInput } from './context.ts'
import { partyOn, productInForce, tankInForce, terminalOn, type InForce, type OnRecord } from './on-record.ts'
import { notInFuture } from './times.ts'
import { verifiedGauges } from './verifications.ts'

export type TicketDraft = ParsedInput<'post-ticket'>['ticket']

/** Everything that a ticket stands on, found and computed. */
export type TicketBasis = {
  readonly terminal: Terminal
  readonly from: Party
  readonly to: Party
  readonly tank: InForce<Tank>
  readonly product: InForce<Product>
  readonly result: TransferResult
}

/** Finds what a draft names and computes what was moved; every finding at once. */
export async function ticketBasis(draft: TicketDraft, record: OnRecord, store: LedgerStore, now: string): Promise<Outcome<TicketBasis>> {
  const opening = notInFuture(draft.opening.at, now, 'ticket.opening.at')
  const closing = notInFuture(draft.closing.at, now, 'ticket.closing.at')
  const at = parseInstant(draft.opening.at, 'ticket.opening.at')
  const asOf = at.ok ? at.value.text : now
  const tank = tankInForce(record, draft.tank, asOf, 'ticket.tank')
  const product = productInForce(record, draft.product, asOf, 'ticket.product')
  return allOf<TicketBasis & { opening: Instant; closing: Instant; version: unknown; free: unknown; gauges: unknown; replaces: unknown }>({
    terminal: terminalOn(record, 'ledger', asOf),
    from: partyOn(record, draft.from, 'ticket.from', asOf),
    to: partyOn(record, draft.to, 'ticket.to', asOf),
    opening, closing,
    tank, product,
    version: oneVersion(draft, record, tank, product),
    free: await notYetTicketed(draft, store),
    gauges: await verifiedGauges(draft, store),
    replaces: await mayReplace(draft, store),
    result: moved(draft, tank, product),
  })
}

/** What was moved, by the tank and product on record; what is on record already was refused elsewhere. */
function moved({ kind, opening, closing, lineFill }: TicketDraft, tank: Outcome<InForce<Tank>>, product: Outcome<InForce<Product>>): Outcome<TransferResult> {
  if (!tank.ok || !product.ok) return refused()
  const input = { kind, tank: tank.value.value, product: product.value.value, opening, closing, ...(lineFill === undefined ? {} : { lineFill }) }
  const result = transferQuantity(input)
  return result.ok ? result : refused(...result.findings.map((finding): Finding => ({ ...finding, path: `ticket.${finding.path}` })))
}

/** One ticket has one capacity table and one product: neither may change between its gauges. */
function oneVersion({ closing }: TicketDraft, record: OnRecord, tank: Outcome<InForce<Tank>>, product: Outcome<InForce<Product>>): Outcome<null> {
  if (!tank.ok || !product.ok || !parseInstant(closing.at, '').ok) return accepted(null)
  const later = [
    tankInForce(record, tank.value.version.code, closing.at, ''), productInForce(record, product.value.version.code, closing.at, ''),
  ].flatMap((one) => (one.ok && ![tank.value.version.seq, product.value.version.seq].includes(one.value.version.seq) ? [one.value.version] : []))
  const findings = later.map(({ code, seq }): Finding => ({
    code: 'out-of-range', path: 'ticket.closing.at', value: closing.at,
    limit: `before another version of ${code} (entry ${seq}) came into force; gauge at that moment and write two tickets`, clause: 'HOUSE effective-date',
  }))
  return findings.length > 0 ? refused(...findings) : accepted(null)
}

/** No other ticket that stands covers any of the time between the gauges of this tank. */
async function notYetTicketed({ tank, opening, closing }: TicketDraft, store: LedgerStore): Promise<Outcome<null>> {
  const period = allOf<{ from: Instant; to: Instant }>({ from: parseInstant(opening.at, ''), to: parseInstant(closing.at, '') })
  if (!period.ok || period.value.from.order >= period.value.to.order) return accepted(null)
  const others = await store.overlapping(tank, opening.at, closing.at)
  const findings = others.map(({ number, openedAt, closedAt }): Finding => ({
    code: 'gauge-overlaps-ticket', path: 'ticket.opening.at', value: `${opening.at} to ${closing.at}`, limit: `${number} (${openedAt} to ${closedAt})`, clause: 'HOUSE tickets',
  }))
  return findings.length > 0 ? refused(...findings) : accepted(null)
}

async function mayReplace({ replaces: number, kind, tank, opening, closing }: TicketDraft, store: LedgerStore): Promise<Outcome<null>> {
  const standing = number === undefined ? undefined : await store.registerLine(number)
  const checked = optional(number, (text): Outcome<null> => {
    const findings = refuseReplacement(standing, text, { kind, tank, openedAt: opening.at, closedAt: closing.at })
    return findings.length > 0 ? refused(...findings) : accepted(null)
  })
  return andThen(checked, () => accepted(null))
}
