import type { Ticket } from '../../core/ticket/index.ts'
import { NUMBERS, numbersCheck, PAGES, pagesCheck, signatureChecks, signersCheck, versionsCheck, type Check } from '../documents/ticket-checks.ts'
import { ticketDataOf, type TicketData } from '../documents/ticket-data.ts'
import { readSignatures, type SignaturesReading } from '../signing/index.ts'

type TicketInside = Extract<TicketData, { ticket: Ticket }>

/** What a ticket document is found to be, from its bytes alone. */
export interface DocumentFound {
  readonly reading: SignaturesReading
  /** The ticket inside; undefined where the data are not whole. */
  readonly ticket: Ticket | undefined
  readonly checks: readonly Check[]
}

/**
 * Signatures, data, numbers and pages of a ticket document.
 * @param core hash of the core that checks
 * @param step called before each part, 1 to 3; may throw to stop
 */
export async function checkDocument(pdf: Uint8Array, core: string, step: (done: number) => void): Promise<DocumentFound> {
  const reading = await readSignatures(pdf)
  step(1)
  const data = ticketDataOf(reading.unsigned)
  const checks: Check[] = [...signatureChecks(reading), wholeCheck(data)]
  if (!('ticket' in data)) return { reading, ticket: undefined, checks }
  step(2)
  checks.push(versionsCheck(data.ticket, data.basis), signersCheck(data.ticket, reading))
  checks.push(...await computedChecks(data, reading, core, () => step(3)))
  return { reading, ticket: data.ticket, checks }
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
