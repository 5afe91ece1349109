/**
 * A program to be killed in the middle of writing: `write-tickets-program.ts LEDGER HOW-MANY` puts tickets made by hand
 * with large documents straight into the store, as fast as it takes them, and says each once it is booked.
 */
import { openStore } from '../../main/store/index.ts'
import { nextTicket } from '../support/ledgers.ts'
import { ticketPosting } from '../support/postings.ts'

const [path = '', howMany = ''] = process.argv.slice(2)
const store = await openStore(path)
for (let n = await store.ticketCount(); n < Number(howMany); n += 1) {
  const { ticket, head } = await nextTicket(store)
  const document = new TextEncoder().encode(`%PDF-1.7 ${ticket.number} `.repeat(20_000))
  const posting = ticketPosting(ticket, document)
  const { sha256 } = posting.body.document
  await store.append([posting], { expectedHead: head, documents: [{ sha256, name: `${ticket.number}.pdf`, bytes: document }] })
  process.stdout.write(`${ticket.number} ${sha256}\n`)
}
await store.close()
