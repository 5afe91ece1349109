/**
 * A program to be killed in the middle of writing: `write-tickets-program.ts LEDGER HOW-MANY KILOBYTES` puts tickets made
 * by hand, with documents of up to that size, straight into the store, as fast as it takes them and beside others that do
 * the same, and says each once it is booked: `CPT-000001 <SHA-256 of its document>`.
 */
import { HeadMoved, openStore } from '../../main/store/index.ts'
import { nextTicket } from '../support/ledgers.ts'
import { ticketPosting } from '../support/postings.ts'

const [path = '', howMany = '', kilobytes = '512'] = process.argv.slice(2)
const store = await openStore(path, { waitMs: 20_000 })
const LINE = 32
for (let n = await store.ticketCount(); n < Number(howMany); n = await store.ticketCount()) {
  const { ticket, head } = await nextTicket(store)
  const lines = 1 + (n * 7919) % (Number(kilobytes) * 1024 / LINE)
  const document = new TextEncoder().encode(`%PDF-1.7 ${ticket.number} ${process.pid}`.padEnd(LINE, ' ').repeat(lines))
  const posting = ticketPosting(ticket, document)
  const { sha256 } = posting.body.document
  try {
    await store.append([posting], { expectedHead: head, documents: [{ sha256, name: `${ticket.number}.pdf`, bytes: document }] })
  } catch (error) {
    if (error instanceof HeadMoved) continue
    throw error
  }
  process.stdout.write(`${ticket.number} ${sha256}\n`)
}
await store.close()
