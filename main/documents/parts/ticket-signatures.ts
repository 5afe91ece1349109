import type { Content, TableCell } from 'pdfmake/interfaces.js'
import type { Signer, Ticket } from '../../../core/ticket/index.ts'
import { blockHeading, BOXED, TINT } from './style.ts'
import { grouped } from './words.ts'

const ROLES: { readonly [R in Signer['role']]: string } = { terminal: 'For the terminal', counterparty: 'For the counterparty', inspector: 'Inspector' }

/** Who signs this ticket, and by which certificate each can be told. */
export function ticketSignatures(ticket: Ticket): Content[] {
  return [{ unbreakable: true, stack: [
    blockHeading('Signatures', 'electronic, one after the other, over every byte of this file; a viewer lists them in its signature panel'),
    { margin: [0, 4, 0, 0], table: { widths: ['*', '*'], body: [ticket.signers.map((signer, place) => box(signer, place + 1))] }, layout: BOXED },
  ] }]
}

function box(signer: Signer, place: number): TableCell {
  return { stack: [
    { text: `${place}. ${ROLES[signer.role]}`, color: TINT, fontSize: 7 },
    { text: signer.name, bold: true, fontSize: 11, margin: [0, 2, 0, 0] },
    { text: `${signer.party} · identity ${signer.identity}`, margin: [0, 0, 0, 3] },
    { text: 'SHA-256 of the certificate', color: TINT, fontSize: 6 },
    { text: grouped(signer.certificate), fontSize: 6.5 },
  ] }
}
