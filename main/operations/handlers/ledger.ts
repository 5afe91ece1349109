import type { Handler } from '../context.ts'
import { summaryOf } from '../entry-summary.ts'

const USUAL = 100

export const verifyLedger: Handler<'verify-ledger'> = async (_input, { store, software }, { progress, signal }) => {
  const { whole, entries, tickets, recomputed, head, differences } = await store.check(progress, signal, software)
  return { whole, entries, tickets, recomputed, head, differences: differences.map(({ where, what }) => ({ where, what })) }
}

export const listEntries: Handler<'list-entries'> = async ({ before, limit = USUAL }, { store }) => {
  const entries = await store.latestEntries(limit + 1, before)
  return {
    entries: entries.slice(0, limit).map((entry) => ({ seq: entry.seq, kind: entry.kind, at: entry.at, by: entry.by, summary: summaryOf(entry), hash: entry.hash })),
    more: entries.length > limit,
  }
}
