import { parseInstant, type Instant } from '../../core/gauge/index.ts'
import type { Product } from '../../core/quantity/index.ts'
import { accepted, allOf, optional, refused, andThen, type Finding, type Outcome } from '../../core/refusal/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { refuseReplacement, type Party, type Terminal } from '../../core/ticket/index.ts'
import { transferQuantity, type TransferResult } from '../../core/transfer/index.ts'
import type { LedgerStore } from '../store/index.ts'
import type { ParsedInput } from './context.ts'
import { partyOn, productInForce, tankInForce, terminalOn, type InForce, type OnRecord } from './on-record.ts'
import { notYetCovered, noTank, oneVersion } from './tank-time.ts'
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
  return allOf<TicketBasis & { opening: Instant; closing: Instant; version: unknown; line: unknown; free: unknown; gauges: unknown; replaces: unknown }>({
    terminal: terminalOn(record, 'ledger', asOf),
    from: partyOn(record, draft.from, 'ticket.from', asOf),
    to: partyOn(record, draft.to, 'ticket.to', asOf),
    opening, closing,
    tank, product,
    version: tank.ok && product.ok ? oneVersion(draft.closing.at, { tank: tank.value.version, product: product.value.version }, record, 'ticket.closing.at') : accepted(null),
    line: draft.lineFill?.line === undefined ? accepted(null) : noTank(draft.lineFill.line, record, 'ticket.lineFill.line'),
    free: await notYetCovered({ tank: draft.tank, opened: draft.opening.at, closed: draft.closing.at, path: 'ticket.opening.at' }, store),
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

async function mayReplace({ replaces: number, kind, tank, opening, closing }: TicketDraft, store: LedgerStore): Promise<Outcome<null>> {
  const standing = number === undefined ? undefined : await store.registerLine(number)
  const checked = optional(number, (text): Outcome<null> => {
    const findings = refuseReplacement(standing, text, { kind, tank, openedAt: opening.at, closedAt: closing.at })
    return findings.length > 0 ? refused(...findings) : accepted(null)
  })
  return andThen(checked, () => accepted(null))
}
