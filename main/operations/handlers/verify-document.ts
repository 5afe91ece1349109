import { Refused } from '../../../core/refusal/index.ts'
import { LARGEST_DOCUMENT } from '../../signing/index.ts'
import type { Call, Handler } from '../context.ts'
import { checkDocument } from '../document-checks.ts'
import { placeInLedger } from '../place-in-ledger.ts'

/** No honest document takes a tenth of it; every single step is bounded by the size of what it reads. */
const LONGEST_SECONDS = 60

/**
 * Checks a ticket document from its bytes alone: signatures, data, numbers, pages; and its place in the ledger where one
 * is open. Whatever does not hold is listed; only a file that cannot be read at all is refused.
 */
export const verifyDocument: Handler<'verify-document'> = async (input, context, call) => {
  const stillTime = limited(call)
  if (input.file.length > (LARGEST_DOCUMENT / 3) * 4 + 4) throw unreadable(`it is larger than ${LARGEST_DOCUMENT} bytes`)
  const pdf = new Uint8Array(Buffer.from(input.file, 'base64'))
  const { reading, ticket, checks: found } = await checkDocument(pdf, context.software.core, stillTime)
  const place = ticket && context.store ? await placeInLedger(ticket, pdf, context.store) : undefined
  const checks = [...found, ...place?.checks ?? []]
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
