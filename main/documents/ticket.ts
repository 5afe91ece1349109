import type { Content, DynamicContent } from 'pdfmake/interfaces.js'
import { canonicalJson } from '../../core/ledger/index.ts'
import type { Ticket } from '../../core/ticket/index.ts'
import { exceptions } from './parts/exceptions.ts'
import { gauges, lineFill } from './parts/gauges.ts'
import { movedFigures } from './parts/moved-figures.ts'
import { howToCheck, whatDecided } from './parts/provenance.ts'
import { INK, MEASURE, TINT } from './parts/style.ts'
import { ticketHeading } from './parts/ticket-heading.ts'
import { ticketSignatures } from './parts/ticket-signatures.ts'
import { movedTable, worksheetTable } from './parts/worksheet-table.ts'
import { renderPdf } from './pdf.ts'
import { BASIS_FILE, TICKET_FILE, type Basis } from './ticket-basis.ts'

/**
 * A ticket as a document, before it is signed: everything it says on its pages, and inside it the same as data. The
 * same ticket gives the same pages always, so that a verifier can draw them again.
 */
export async function ticketDocument(ticket: Ticket, basis: Basis): Promise<Uint8Array> {
  return renderPdf({
    title: `Ticket ${ticket.number}, ${ticket.terminal.name}`,
    subject: `${ticket.kind} of ${ticket.productName}, tank ${ticket.tank.code}`,
    at: ticket.issuedAt,
    content: pages(ticket, basis),
    footer: footer(ticket),
    attachments: [
      { name: TICKET_FILE, text: canonicalJson(ticket), says: `Ticket ${ticket.number} as data` },
      { name: BASIS_FILE, text: canonicalJson(basis), says: 'Tank with its capacity table, and product, as the ticket names them' },
    ],
  })
}

function pages(ticket: Ticket, basis: Basis): Content[] {
  const { result } = ticket
  return [
    ...ticketHeading(ticket, basis),
    ...movedFigures(ticket),
    ...exceptions([...result.exceptions, ...result.opening.exceptions, ...result.closing.exceptions]),
    ...gauges(ticket, basis),
    ...lineFill(ticket),
    ...(ticket.remarks === undefined ? [] : [{ text: [{ text: 'Remarks  ', bold: true }, ticket.remarks], margin: [0, 8, 0, 0] } satisfies Content]),
    ...whatDecided(ticket, basis),
    ...ticketSignatures(ticket),
    howToCheck(),
    ...worksheetTable(result.opening.lines, result.closing.lines),
    ...movedTable(result.lines),
  ]
}

function footer(ticket: Ticket): DynamicContent {
  return (page, count) => ({
    margin: [36, 10, 36, 0],
    stack: [
      { canvas: [{ type: 'line', x1: 0, y1: 0, x2: MEASURE, y2: 0, lineWidth: 0.6, lineColor: INK }] },
      { margin: [0, 3, 0, 0], columns: [
        { text: [{ text: ticket.number, bold: true }, `  ${ticket.terminal.name}`], width: '*' },
        { text: `${ticket.software.name} ${ticket.software.version} · core ${ticket.software.core.slice(0, 12)}`, color: TINT, alignment: 'center', width: '*' },
        { text: `page ${page} of ${count}`, alignment: 'right', width: '*' },
      ] },
    ],
  })
}
