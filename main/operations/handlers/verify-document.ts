import { Refused } from '../../../core/refusal/index.ts'
import type { Ticket } from '../../../core/ticket/index.ts'
import { NUMBERS, numbersCheck, PAGES, pagesCheck, signatureChecks, signersCheck, versionsCheck, type Check } from '../../documents/ticket-checks.ts'
import { ticketDataOf, type TicketData } from '../../documents/ticket-data.ts'
import { LARGEST_DOCUMENT, readSignatures, type SignaturesReading } from '../../signing/index.ts'
import type { Call, Handler } from '../context.ts'
import { placeInLedger } from '../place-in-ledger.ts'

/** No honest document takes a tenth of it; every single step is bounded by the size of what it reads. */
const LONGEST_SECONDS = 60

type TicketInside = Extract<TicketData, { ticket: Ticket }>

/**
 * Checks a ticket document from its bytes alone: signatures, data, numbers, pages; and its place in the ledger where one
 * is open. Whatever does not hold is listed; only a file that cannot be read at all is refused.
 */
export const verifyDocument: Handler<'verify-document'> = async (input, context, call) => {
  const stillTime = limited(call)
  if (input.file.length > (LARGEST_DOCUMENT / 3) * 4 + 4) throw unreadable(`it is larger than ${LARGEST_DOCUMENT} bytes`)
  const pdf = new Uint8Array(Buffer.from(input.file, 'base64'))
  const reading = await readSignatures(pdf)
  stillTime(1)
  const data = ticketDataOf(reading.unsigned)
  const checks: Check[] = [...signatureChecks(reading), wholeCheck(data)]
  const ticket = 'ticket' in data ? data.ticket : undefined
  if ('ticket' in data) {
    stillTime(2)
    checks.push(versionsCheck(data.ticket, data.basis), signersCheck(data.ticket, reading))
    checks.push(...await computedChecks(data, reading, context.software.core, () => stillTime(3)))
  }
  const place = ticket && context.store ? await placeInLedger(ticket, pdf, context.store) : undefined
  checks.push(...place?.checks ?? [])
  return {
    valid: checks.every((one) => one.holds),
    number: ticket?.number ?? '',
    signatures: reading.signatures.map((one, at) => ({
      name: one.name, party: ticket?.signers[at]?.party ?? '', certificate: one.certificate, signedAt: one.at, valid: one.problems.length === 0,
    })),
    checks,
    ledgerPosition: place?.position ?? (ticket ? `no ledger was open; the ticket states ${ticket.ledger.seq} entries before it, head ${ticket.ledger.head}` : 'unknown'),
  }
}

function wholeCheck(data: TicketData): Check {
  const what = 'The data inside are whole'
  return 'problem' in data ? { check: what, holds: false, detail: data.problem } : { check: what, holds: true, detail: 'ticket.json and basis.json, each in its one canonical form' }
}

/** Numbers and pages. Pages are drawn only from signed data whose numbers came out, so that a hostile file costs nothing. */
async function computedChecks({ ticket, basis }: TicketInside, reading: SignaturesReading, core: string, stillTime: () => void): Promise<readonly Check[]> {
  const numbers = await attempted(NUMBERS, async () => numbersCheck(ticket, basis))
  stillTime()
  const signed = reading.signatures.every((one) => one.problems.length === 0)
  const why = !signed ? 'the signatures do not hold' : !numbers.holds ? 'the numbers do not come out' : ''
  if (why !== '') return [numbers, { check: PAGES, holds: false, detail: `not drawn again, because ${why}` }]
  return [numbers, await attempted(PAGES, () => pagesCheck(ticket, basis, reading.unsigned, core))]
}

/** A computation that broke down on what a file holds is an answer about the file. */
async function attempted(what: string, look: () => Promise<Check>): Promise<Check> {
  try {
    return await look()
  } catch (error) {
    return { check: what, holds: false, detail: `it could not be done: ${error instanceof Error ? error.message : String(error)}` }
  }
}

function limited(call: Call): (done: number) => void {
  const end = performance.now() + 1000 * LONGEST_SECONDS
  return (done) => {
    call.signal.throwIfAborted()
    if (performance.now() > end) throw unreadable(`checking it takes longer than ${LONGEST_SECONDS} s`)
    call.progress({ done, of: 3, what: ['', 'signatures', 'data', 'numbers'][done] ?? '' })
  }
}

function unreadable(why: string): Refused {
  return new Refused([{ code: 'document-unreadable', path: 'file', value: 'this file', limit: why, clause: 'HOUSE documents' }])
}
