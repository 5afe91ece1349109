/**
 * Tickets: what two parties sign, its number, void and replacement.
 * In: a transfer result and who hands over. Out: {@link Ticket}. CFR43-3174.12.
 */
export { makeTicket, type TicketParts } from './make-ticket.ts'
export { numberOf, ticketNumber } from './number.ts'
export {
  partySchema, SIGNER_ROLES, signerSchema, softwareSchema, terminalSchema, ticketSchema, versionSchema,
  type Party, type Signer, type Software, type Terminal, type Ticket, type Version,
} from './ticket.ts'
export { refuseSides, type Sides } from './parties.ts'
export { refuseReplacement, refuseVoid, type Replacement, type TicketStanding } from './void-and-replace.ts'
