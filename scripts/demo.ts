import { mkdir, readFile, rm, writeFile } from 'node:fs/promises'
import { join, relative } from 'node:path'
import { callOperation } from '../main/operations/call-operation.ts'
import type { InputOf, OperationName, OutputOf, Progress } from '../main/operations/contracts/index.ts'
import { filesBelow, fillFromSamples, passphraseIn } from '../main/shells/fill-from-samples.ts'
import { openContext } from '../main/shells/open-context.ts'
import { root } from './run.ts'
import { closedPeriod } from './demo-period.ts'
import { reconciliationLines, ticketLines } from './demo-summary.ts'

/**
 * The whole job with no window: the sample terminal and its September are read and posted, every ticket is signed and
 * written as PDF, every PDF is checked again from its own bytes, the month is reconciled, and the ledger is checked.
 * What it leaves in out/ replaces what an earlier run left there.
 */
const out = join(root, 'out')
const ledger = join(out, 'ledger.db')
const samples = join(root, 'samples')
const PERIOD = { from: '2026-09-01T05:00:00Z', to: '2026-10-01T05:00:00Z' }

for (const earlier of ['ledger.db', 'ledger.db-wal', 'ledger.db-shm', 'tickets', 'reconciliation']) await rm(join(out, earlier), { recursive: true, force: true })
await mkdir(join(out, 'tickets'), { recursive: true })
await mkdir(join(out, 'reconciliation'), { recursive: true })

const began = performance.now()
const context = await openContext(ledger, (line) => { console.error(line) })
const silent = (_step: Progress): void => undefined

async function ask<N extends OperationName>(name: N, input: InputOf<N>, where = context): Promise<OutputOf<N>> {
  const answer = await callOperation(name, input, where, { progress: silent, signal: new AbortController().signal })
  if ('result' in answer) return answer.result
  throw new Error(`${name}: ${'refused' in answer ? answer.refused.findings.map((finding) => finding.message).join('\n') : answer.fault.message}`)
}

console.log(`Reading ${relative(root, samples)}/ (${String(Object.keys(await filesBelow(samples)).length)} files) and posting it to ${relative(root, ledger)}`)
await fillFromSamples(context, samples, (line) => { console.log(line) })

const tickets = (await ask('list-tickets', { limit: 1000 })).tickets.toReversed()
let sound = 0
for (const { number } of tickets) {
  const { name, file } = await ask('ticket-document', { number })
  const path = join(out, 'tickets', name)
  await writeFile(path, Buffer.from(file, 'base64'))
  const check = await ask('verify-document', { name, file: (await readFile(path)).toString('base64') }, { ...context, store: null })
  if (check.valid) sound += 1
  else console.log(`  ${number} does not hold: ${check.checks.filter(({ holds }) => !holds).map(({ check: what, detail }) => `${what}: ${detail}`).join('; ')}`)
}
console.log(`\nTickets: ${String(tickets.length)}, each signed by two people; ${String(sound)} of ${String(tickets.length)} hold when every number is computed again from their own file`)
for (const line of ticketLines(tickets)) console.log(`  ${line}`)

const period = await closedPeriod(ask, PERIOD, passphraseIn(await filesBelow(samples)))
const report = await ask('reconcile', PERIOD)
for (const format of ['pdf', 'csv'] as const) {
  const { name, file } = await ask('reconciliation-document', { ...PERIOD, format })
  await writeFile(join(out, 'reconciliation', name), Buffer.from(file, 'base64'))
}
console.log('')
for (const line of reconciliationLines(report)) console.log(line)

for (const format of ['json', 'pdf'] as const) {
  const { name, file } = await ask('seal-document', { period: period.name, format })
  await writeFile(join(out, 'reconciliation', name), Buffer.from(file, 'base64'))
}
console.log('')
for (const line of period.lines) console.log(line)

const check = await ask('verify-ledger', {})
console.log(`\nLedger: ${String(check.entries)} entries, ${check.whole ? 'whole' : `NOT WHOLE: ${check.differences.map(({ where, what }) => `${where}: ${what}`).join('; ')}`}; head ${check.head}`)
await context.store?.close()
console.log(`Files: out/tickets/ (${String(tickets.length)} PDF), out/reconciliation/ (PDF and CSV, and the seal of the month), out/ledger.db; ${((performance.now() - began) / 1000).toFixed(0)} s`)
if (!check.whole || sound < tickets.length) process.exitCode = 1
