/**
 * A desk of many: `desk-program.ts ADDRESS HOW-MANY` posts that many tickets made by hand, as an operation would, and
 * says each once it is booked: `CPT-000001 <SHA-256 of its document>`. What goes wrong with the server it says as
 * `fault …`, and goes on.
 */
import { setTimeout } from 'node:timers/promises'
import { HeadMoved, LedgerFault, openStore, type LedgerStore } from '../../main/store/index.ts'
import { nextTicket } from '../support/ledgers.ts'
import { ticketPosting } from '../support/postings.ts'

const [address = '', howMany = '0'] = process.argv.slice(2)

const store = await opened()
for (let posted = 0; posted < Number(howMany);) if (await post(store)) posted += 1
await store.close()

async function opened(): Promise<LedgerStore> {
  for (;;) {
    const found = await openStore(address).catch(said)
    if (found !== undefined) return found
  }
}

async function post(ledger: LedgerStore): Promise<boolean> {
  try {
    const { ticket, document, head } = await nextTicket(ledger, { remarks: `Desk ${process.pid}` })
    const posting = ticketPosting(ticket, document)
    const { sha256 } = posting.body.document
    await ledger.append([posting], { expectedHead: head, documents: [{ sha256, name: `${ticket.number}.pdf`, bytes: document }] })
    process.stdout.write(`${ticket.number} ${sha256}\n`)
    return true
  } catch (error) {
    if (!(error instanceof HeadMoved) && !outOfDate(error)) await said(error)
    return false
  }
}

/** Head and number were read one after the other, and another desk posted in between. */
function outOfDate(error: unknown): boolean {
  return error instanceof Error && error.message.includes('does not fit the ledger')
}

async function said(error: unknown): Promise<undefined> {
  if (!(error instanceof LedgerFault)) throw error
  process.stdout.write(`fault ${error.message}\n`)
  await setTimeout(50)
  return undefined
}
