import { Buffer } from 'node:buffer'
import { parseInstant } from '../../../core/gauge/index.ts'
import type { Late } from '../../../core/ledger/index.ts'
import { allOf, optional, orRefuse, Refused, type Finding } from '../../../core/refusal/index.ts'
import { refuseVoid } from '../../../core/ticket/index.ts'
import { atHead } from '../at-head.ts'
import { bookable, type LateWish } from '../bookable.ts'
import type { Handler, LedgerContext } from '../context.ts'
import { lateOfEntry } from '../late-lines.ts'
import { post } from '../post.ts'
import { enteredBy } from '../who.ts'

const USUAL = 200

export const listTickets: Handler<'list-tickets'> = async ({ limit = USUAL, ...filter }, { store }) => {
  orRefuse(allOf<{ from: unknown; to: unknown }>({
    from: optional(filter.from, (text) => parseInstant(text, 'from')), to: optional(filter.to, (text) => parseInstant(text, 'to')),
  }))
  const lines = await store.register({ ...filter, limit: limit + 1 })
  return { tickets: lines.slice(0, limit), more: lines.length > limit }
}

export const readTicket: Handler<'read-ticket'> = async ({ number }, { store }) => {
  const [entry, line] = await Promise.all([store.ticketEntry(number), store.registerLine(number)])
  if (!entry || !line) throw new Refused([unknownTicket(number)])
  return { ticket: entry.body.ticket, line, hash: entry.hash, documentHash: entry.body.document.sha256, ...await lateOfEntry(store, entry.seq) }
}

export const ticketDocument: Handler<'ticket-document'> = async ({ number }, { store }) => {
  const entry = await store.ticketEntry(number)
  if (!entry) throw new Refused([unknownTicket(number)])
  const { sha256 } = entry.body.document
  const document = await store.document(sha256)
  if (!document) throw new Refused([{ code: 'ledger-damaged', path: 'number', value: `the document of ${number} is missing`, limit: 'run verify-ledger and go back to a backup', clause: 'HOUSE ledger' }])
  return { name: document.name, type: 'application/pdf', file: Buffer.from(document.bytes).toString('base64'), sha256 }
}

export const voidTicket: Handler<'void-ticket'> = async ({ number, reason, by, late: wish }, context, { signal }) =>
  atHead(context.store, signal, async (head) => {
    const { store, now } = context
    const line = await store.registerLine(number)
    const findings = refuseVoid(line, { number, reason })
    if (line === undefined || findings.length > 0) throw new Refused(findings)
    const late = await voidable(line.seq, wish, context)
    return post(store, { kind: 'ticket-voided', at: now(), by: enteredBy(context, by), body: { number, reason, ...late === undefined ? {} : { late } } }, { expectedHead: head.hash })
  })

/** A void counts where the movement that it takes away counts: in its open period, or late where that is closed by now. */
async function voidable(seq: number, wish: LateWish | undefined, context: LedgerContext): Promise<Late | undefined> {
  const bookedAt = (await context.store.movementsOf(seq))[0]?.bookedAt
  if (bookedAt === undefined) throw new Error(`Entry ${seq} is a ticket and booked nothing.`)
  return orRefuse(await bookable({ opened: bookedAt, closed: bookedAt }, wish && { corrects: seq, ...wish }, context, { opened: 'number', closed: 'number', late: 'late' }))
}

function unknownTicket(number: string): Finding {
  return { code: 'unknown-ticket', path: 'number', value: number, limit: 'give a number as the register shows it', clause: 'HOUSE void-and-replace' }
}
