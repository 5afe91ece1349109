import type { Ticket } from './ticket.ts'

/** Everything that a ticket is assembled from; the kind is that of its result. */
export type TicketParts = Omit<Ticket, 'schema' | 'kind'>

/**
 * Assembles a ticket. Nothing is computed, looked up or made up here; what is absent is left out.
 * @param parts everything that stands on the ticket
 * @source CFR43-3174.12 (b)
 */
export function makeTicket(parts: TicketParts): Ticket {
  return {
    schema: 'dipledger-ticket-1',
    number: parts.number,
    issuedAt: parts.issuedAt,
    terminal: parts.terminal,
    kind: parts.result.kind,
    from: parts.from,
    to: parts.to,
    tank: parts.tank,
    product: parts.product,
    productName: parts.productName,
    opening: parts.opening,
    closing: parts.closing,
    ...(parts.lineFill === undefined ? {} : { lineFill: parts.lineFill }),
    result: parts.result,
    ...(parts.reference === undefined ? {} : { reference: parts.reference }),
    ...(parts.remarks === undefined ? {} : { remarks: parts.remarks }),
    ...(parts.replaces === undefined ? {} : { replaces: parts.replaces }),
    signers: parts.signers,
    software: parts.software,
    ledger: parts.ledger,
  }
}
