import type { Ticket } from '../../core/ticket/index.ts'
import { sheetOfSnapshot } from '../gauge/sheet-of-snapshot.ts'
import type { TransferForm } from './transfer-form.ts'

/** A new sheet that says what a ticket says, and that it replaces it; results are computed anew. */
export function copyOfTicket(ticket: Pick<Ticket, 'number' | 'kind' | 'tank' | 'product' | 'from' | 'to' | 'reference' | 'remarks' | 'opening' | 'closing' | 'lineFill'>, zone: string): TransferForm {
  const empty = { volume: '', temperature: '' }
  return {
    kind: ticket.kind, tank: ticket.tank.code, product: ticket.product.code, from: ticket.from.code, to: ticket.to.code,
    reference: ticket.reference ?? '', remarks: ticket.remarks ?? '', replaces: ticket.number,
    opening: sheetOfSnapshot(ticket.opening, zone), closing: sheetOfSnapshot(ticket.closing, zone),
    lineFill: { used: ticket.lineFill !== undefined, line: ticket.lineFill?.line ?? '', opening: ticket.lineFill?.opening ?? empty, closing: ticket.lineFill?.closing ?? empty },
  }
}
