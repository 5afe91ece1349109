/**
 * A program to be killed: `post-tickets-program.ts LEDGER HOW-MANY` posts tickets through `post-ticket`, one after
 * another until the ledger holds that many, and says each on its output once it is booked: `CPT-000001 <SHA-256 of its PDF>`.
 */
import { callOperation } from '../../main/operations/call-operation.ts'
import type { Context } from '../../main/operations/context.ts'
import { openContext } from '../../main/shells/open-context.ts'
import { aClosingGauge, anOpeningGauge } from '../support/snapshots.ts'
import { aReceipt } from '../support/tickets.ts'

const [path = '', howMany = ''] = process.argv.slice(2)
const context: Context = { ...await openContext(path, (line) => { process.stderr.write(`${line}\n`) }), now: () => '2026-04-30T08:00:00Z' }
if (context.store === null) throw new Error('No ledger')

for (let n = await context.store.ticketCount(); n < Number(howMany); n += 1) {
  const answer = await callOperation('post-ticket', receiptNumber(n), context, { progress: () => undefined, signal: new AbortController().signal })
  if (!('result' in answer)) throw new Error(JSON.stringify(answer))
  process.stdout.write(`${answer.result.number} ${answer.result.document.sha256}\n`)
}
await context.store.close()

/** Receipts of one hour each, one every four hours from 20 March on. */
function receiptNumber(n: number): ReturnType<typeof aReceipt> {
  const at = (hours: number): string => new Date(Date.UTC(2026, 2, 20, n * 4 + hours)).toISOString()
  return aReceipt({ opening: anOpeningGauge({ at: at(0) }), closing: aClosingGauge({ at: at(1) }) })
}
