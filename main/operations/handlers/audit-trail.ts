import { Buffer } from 'node:buffer'
import { setImmediate } from 'node:timers/promises'
import { orRefuse, Refused } from '../../../core/refusal/index.ts'
import { TRAIL_HEADING, trailCsv, trailJson } from '../../documents/audit-trail-file.ts'
import type { TrailPage } from '../../store/index.ts'
import type { Handler } from '../context.ts'
import { LARGEST_TRAIL_FILE } from '../contracts/audit-trail.ts'
import { changedBy, correctedBy } from '../entry-changes.ts'
import { trailFilter, trailLine } from '../trail-lines.ts'
import { readNames } from '../trail-names.ts'

const USUAL = 100
/** Read at once for a file. */
const BATCH = 400

export const auditTrail: Handler<'audit-trail'> = async ({ before, limit = USUAL, ...wanted }, { store }) => {
  const names = await readNames(store)
  const page = await store.trail(orRefuse(trailFilter(wanted, names)), limit, before)
  return { entries: page.entries.map((entry) => trailLine(entry, names)), before: page.before }
}

export const exportAuditTrail: Handler<'export-audit-trail'> = async ({ format, rows, before: end, ...wanted }, { store, now }, { progress, signal }) => {
  const names = await readNames(store)
  const filter = orRefuse(trailFilter(wanted, names))
  const written = format === 'csv' ? trailCsv : trailJson
  const { seq: last } = await store.head()
  const everything = Object.values(wanted).every((part) => part === undefined)
  if (rows === undefined && everything && Math.min(last, (end ?? Infinity) - 1) > LARGEST_TRAIL_FILE) throw tooMany()
  const lines: string[] = []
  let before: number | null = end ?? last + 1
  while (before !== null && lines.length < (rows ?? LARGEST_TRAIL_FILE + 1)) {
    const page: TrailPage = await store.trail(filter, Math.min(BATCH, (rows ?? Infinity) - lines.length), before)
    for (const entry of page.entries) lines.push(written(trailLine(entry, names), await changedBy(entry, store)))
    before = page.before
    progress({ done: last - (before ?? 1) + 1, of: last, what: 'entries' })
    await setImmediate()
    signal.throwIfAborted()
  }
  if (rows === undefined && lines.length > LARGEST_TRAIL_FILE) throw tooMany()
  const text = `${format === 'csv' ? TRAIL_HEADING : ''}${lines.toReversed().join('')}`
  const part = end === undefined ? '' : `-before-${end}`
  return {
    name: `audit-trail-${now().slice(0, 10)}${part}.${format === 'csv' ? 'csv' : 'jsonl'}`, type: format === 'csv' ? 'text/csv' : 'application/x-ndjson',
    entries: lines.length, file: Buffer.from(text).toString('base64'), before,
  }
}

export const readEntry: Handler<'read-entry'> = async ({ seq }, { store }) => {
  const entry = await store.entry(seq)
  if (entry === undefined) throw new Refused([{ code: 'unknown-entry', path: 'seq', value: String(seq), limit: `the ledger ends at ${(await store.head()).seq}`, clause: 'HOUSE audit trail' }])
  const [names, changed, corrects] = await Promise.all([readNames(store), changedBy(entry, store), correctedBy(entry, store)])
  // the body was read strictly as plain data
  return { line: trailLine(entry, names), body: JSON.parse(JSON.stringify(entry.body)) as never, previous: entry.previous, origin: entry.origin ?? null, changed, corrects }
}

function tooMany(): Refused {
  return new Refused([{
    code: 'out-of-range', path: 'rows', value: `more than ${LARGEST_TRAIL_FILE} entries in one file`, clause: 'HOUSE audit trail',
    limit: `${LARGEST_TRAIL_FILE} rows; take a shorter time with “from” and “to”, or parts: “rows”, and with each next call the “before” of the last answer`,
  }])
}
