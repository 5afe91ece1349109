import { Buffer } from 'node:buffer'
import { setImmediate } from 'node:timers/promises'
import { orRefuse, Refused } from '../../../core/refusal/index.ts'
import { TRAIL_HEADING, trailCsv, trailJson } from '../../documents/audit-trail-file.ts'
import type { Handler } from '../context.ts'
import { trailFilter, trailLine } from '../trail-lines.ts'

const USUAL = 100
/** Read at once for a file. */
const BATCH = 400
/** As many rows as a spreadsheet opens; more belongs in several files. */
const LARGEST = 200_000

export const auditTrail: Handler<'audit-trail'> = async ({ before, limit = USUAL, ...wanted }, { store }) => {
  const page = await store.trail(orRefuse(trailFilter(wanted)), limit, before)
  return { entries: page.entries.map(trailLine), before: page.before }
}

export const exportAuditTrail: Handler<'export-audit-trail'> = async ({ format, ...wanted }, { store, now }, { progress, signal }) => {
  const filter = orRefuse(trailFilter(wanted))
  const written = format === 'csv' ? trailCsv : trailJson
  const { seq: last } = await store.head()
  const lines: string[] = []
  for (let before: number | null = last + 1; before !== null;) {
    const page = await store.trail(filter, BATCH, before)
    lines.push(...page.entries.map((entry) => written(trailLine(entry))))
    if (lines.length > LARGEST) throw tooMany()
    before = page.before
    progress({ done: last - (before ?? 1) + 1, of: last, what: 'entries' })
    await setImmediate()
    signal.throwIfAborted()
  }
  const text = `${format === 'csv' ? TRAIL_HEADING : ''}${lines.toReversed().join('')}`
  return {
    name: `audit-trail-${now().slice(0, 10)}.${format === 'csv' ? 'csv' : 'jsonl'}`, type: format === 'csv' ? 'text/csv' : 'application/x-ndjson',
    entries: lines.length, file: Buffer.from(text).toString('base64'),
  }
}

export const readEntry: Handler<'read-entry'> = async ({ seq }, { store }) => {
  const entry = await store.entry(seq)
  if (entry === undefined) throw new Refused([{ code: 'unknown-entry', path: 'seq', value: String(seq), limit: `the ledger ends at ${(await store.head()).seq}`, clause: 'HOUSE audit trail' }])
  // the body was read strictly as plain data
  return { line: trailLine(entry), body: JSON.parse(JSON.stringify(entry.body)) as never, previous: entry.previous, origin: entry.origin ?? null }
}

function tooMany(): Refused {
  return new Refused([{ code: 'out-of-range', path: 'from', value: `more than ${LARGEST} entries`, limit: `${LARGEST} rows in one file; take a shorter time`, clause: 'HOUSE audit trail' }])
}
