import { accepted, allOf, orRefuse, refused, type Outcome } from '../../../core/refusal/index.ts'
import type { LedgerStore } from '../../store/index.ts'
import type { Handler } from '../context.ts'
import { summaryOf } from '../entry-summary.ts'
import { openDocuments } from '../open-documents.ts'
import { readNames } from '../trail-names.ts'
import { recomputesBy } from '../recomputes.ts'

const USUAL = 100

export const verifyLedger: Handler<'verify-ledger'> = async ({ documents = false }, context, call) => {
  const found = await context.store.check(call.progress, call.signal, recomputesBy(context.software))
  const opened = documents ? await openDocuments(context, call, 1, found.entries) : { documents: 0, differences: [] }
  return {
    whole: found.whole && opened.differences.length === 0,
    entries: found.entries, tickets: found.tickets, recomputed: found.recomputed, documents: opened.documents, head: found.head,
    differences: [...found.differences, ...opened.differences].map(({ where, what }) => ({ where, what })),
    noticed: [...found.noticed],
  }
}

export const verifyDocuments: Handler<'verify-documents'> = async ({ from, to }, context, call) => {
  const { store } = context
  const ends = orRefuse(allOf<{ from: number; to: number }>({ from: await seqOf(store, from, 'from', 1), to: await seqOf(store, to, 'to', (await store.head()).seq) }))
  const { documents, differences } = await openDocuments(context, call, ends.from, ends.to)
  return { whole: differences.length === 0, documents, differences: differences.map(({ where, what }) => ({ where, what })) }
}

async function seqOf(store: LedgerStore, number: string | undefined, path: string, otherwise: number): Promise<Outcome<number>> {
  if (number === undefined) return accepted(otherwise)
  const line = await store.registerLine(number)
  return line === undefined ? refused({ code: 'unknown-ticket', path, value: number, limit: 'give a number as the register shows it', clause: 'HOUSE tickets' }) : accepted(line.seq)
}

export const listEntries: Handler<'list-entries'> = async ({ before, limit = USUAL }, { store }) => {
  const [entries, names] = await Promise.all([store.latestEntries(limit + 1, before), readNames(store)])
  return {
    entries: entries.slice(0, limit).map((entry) => ({ seq: entry.seq, kind: entry.kind, at: entry.at, by: entry.by, summary: summaryOf(entry, names.at(entry.seq)), hash: entry.hash })),
    more: entries.length > limit,
  }
}
