import type { Content, TableCell } from 'pdfmake/interfaces.js'
import type { Ticket } from '../../../core/ticket/index.ts'
import { printedUnit } from '../../../core/units/index.ts'
import { BASIS_FILE, TICKET_FILE, type Basis } from '../ticket-basis.ts'
import { blockHeading, RULED, TINT } from './style.ts'
import { grouped } from './words.ts'

/** What decided the numbers, by hash, and where the ticket stands in the ledger. */
export function whatDecided(ticket: Ticket, basis: Basis): Content[] {
  const table = basis.tank.capacityTable
  const [degrees = '', unit = ''] = table.baseTemperature.split(' ')
  return [
    blockHeading('What decided the numbers'),
    { table: { widths: [118, '*'], dontBreakRows: true, body: [
      row('Capacity table', `certificate ${table.certificate}, ${table.issuedBy}, ${table.issuedOn}; ${table.rows.length} lines, ${printedUnit(table.volumeUnit)}, shell at ${degrees} ${printedUnit(unit)}`),
      row('Tank', `${ticket.tank.code}, ledger entry ${ticket.tank.seq}`, ticket.tank.hash),
      row('Product', `${ticket.product.code}, ledger entry ${ticket.product.seq}`, ticket.product.hash),
      row('Software', `${ticket.software.name} ${ticket.software.version}, core`, ticket.software.core),
      row('Ledger before this ticket', `${ticket.ledger.seq} entries, head`, ticket.ledger.head),
    ] }, layout: { ...RULED, hLineWidth: (line) => (line === 0 ? 0 : 0.25) } },
  ]
}

/** How anybody can check the ticket. */
export function howToCheck(): Content {
  return { unbreakable: true, stack: [
    blockHeading('How to check this ticket'),
    { text: `Open the file in any PDF reader that shows signatures: both must be valid, and the second must cover the whole file. Compare the certificates with those the signers gave you. To compute every number again from the data inside this file (${TICKET_FILE}: the ticket; ${BASIS_FILE}: tank, capacity table, product):`, margin: [0, 2, 0, 0] },
    { text: 'npx dipledger verify-document FILE', bold: true, fontSize: 8.5, margin: [0, 3, 0, 3] },
    { text: 'A printed copy carries no signature. The instants of signing are the signers’ own statements; no time-stamp authority was asked.', color: TINT },
  ] }
}

function row(label: string, words: string, hash?: string): TableCell[] {
  return [{ text: label, color: TINT }, { text: hash === undefined ? words : [`${words}\n`, { text: grouped(hash), fontSize: 6.5 }] }]
}
