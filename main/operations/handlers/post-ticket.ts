import { sha256Hex, type Late } from '../../../core/ledger/index.ts'
import { accepted, allOf, orRefuse, refused, type Outcome } from '../../../core/refusal/index.ts'
import { makeTicket, ticketNumber, type Ticket } from '../../../core/ticket/index.ts'
import { ticketDocument } from '../../documents/ticket.ts'
import type { Head, LedgerStore } from '../../store/index.ts'
import { atHeadOrAlone } from '../at-head.ts'
import { bookable } from '../bookable.ts'
import type { Call, Handler, LedgerContext, ParsedInput } from '../context.ts'
import { readRecord } from '../on-record.ts'
import { post } from '../post.ts'
import { ticketBasis, type TicketBasis } from '../ticket-basis.ts'
import { openSigners, signerOnTicket, signInTurn, type ReadySigner } from '../ticket-signers.ts'
import { enteredBy } from '../who.ts'

type Input = ParsedInput<'post-ticket'>

const PATHS = { opened: 'ticket.opening.at', closed: 'ticket.closing.at', late: 'late' } as const

/**
 * Number, document, two signatures and entry, all of it or nothing: what is checked and what is signed holds for one
 * head of the ledger, and is made again when another posting comes first.
 */
export const postTicket: Handler<'post-ticket'> = async (input, context, call) => {
  const { store } = context
  const posted = await atHeadOrAlone(store, call.signal, (head, held) => postAt(head, input, { ...context, store: held }, call))
  if (input.draft !== undefined) await store.discardDraft(input.draft)
  return posted
}

async function postAt(head: Head, input: Input, context: LedgerContext, { progress, signal }: Call) {
  const { ticket: draft, draft: draftId } = input
  const { store, now } = context
  const step = (done: number, what: string): void => progress({ done, of: 4, what })
  step(0, 'checking the ticket')
  const at = now()
  const record = await readRecord(store)
  const corrects = draft.replaces === undefined ? undefined : (await store.registerLine(draft.replaces))?.seq
  const ready = orRefuse(allOf<{ draft: null; late: Late | undefined; basis: TicketBasis; signers: readonly [ReadySigner, ReadySigner] }>({
    draft: await stillThere(draftId, store), late: await bookable({ opened: draft.opening.at, closed: draft.closing.at }, input.late && { corrects, ...input.late }, context, PATHS), basis: await ticketBasis(draft, record, store, at), signers: await openSigners(input, record, context),
  }))
  signal.throwIfAborted()
  step(1, 'writing the document')
  const ticket = numbered(draft, ready.basis, ready.signers, { at, head, count: await store.ticketCount(), context })
  const document = await ticketDocument(ticket, { tank: ready.basis.tank.value, product: ready.basis.product.value })
  signal.throwIfAborted()
  step(2, 'signing')
  const revisions = await signInTurn(document, ready.signers, at)
  const signed = revisions.at(-1) ?? document
  signal.throwIfAborted()
  step(3, 'booking')
  const stored = { sha256: sha256Hex(signed), bytes: signed.length }
  const posted = await post(store, {
    kind: 'ticket-posted', at, by: enteredBy(context, context.caller === undefined ? ready.signers[0].identity.name : undefined), body: { ticket, document: { ...stored, revisions: revisions.map(sha256Hex) }, ...ready.late === undefined ? {} : { late: ready.late } },
  }, { expectedHead: head.hash, documents: [{ sha256: stored.sha256, name: `${ticket.number}.pdf`, bytes: signed }] })
  step(4, 'booked')
  return { number: ticket.number, ...posted, document: stored }
}

/** A draft that is gone was posted or discarded in another window: it must not be posted twice. */
async function stillThere(id: string | undefined, store: LedgerStore): Promise<Outcome<null>> {
  if (id === undefined || (await store.drafts()).some((draft) => draft.id === id)) return accepted(null)
  return refused({ code: 'unknown-draft', path: 'draft', value: id, limit: 'look for its ticket in the register', clause: 'HOUSE drafts' })
}

interface Moment { readonly at: string; readonly head: Head; readonly count: number; readonly context: LedgerContext }

function numbered(draft: Input['ticket'], basis: TicketBasis, [first, second]: readonly [ReadySigner, ReadySigner], { at, head, count, context }: Moment): Ticket {
  const { lineFill, reference, remarks, replaces } = draft
  return makeTicket({
    number: ticketNumber(basis.terminal.code, count + 1), issuedAt: at, terminal: basis.terminal, from: basis.from, to: basis.to,
    tank: basis.tank.version, product: basis.product.version, productName: basis.product.value.name,
    opening: draft.opening, closing: draft.closing, lineFill, result: basis.result, reference, remarks, replaces,
    signers: [signerOnTicket(first), signerOnTicket(second)], software: context.software, ledger: { seq: head.seq, head: head.hash },
  })
}
