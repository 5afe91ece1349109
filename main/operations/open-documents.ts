import { setImmediate } from 'node:timers/promises'
import { canonicalJson, firstDifference, type EntryOf } from '../../core/ledger/index.ts'
import type { Check } from '../documents/ticket-checks.ts'
import type { LedgerStore, Difference } from '../store/index.ts'
import { signatureChecks } from './check-seal.ts'
import type { Call, LedgerContext } from './context.ts'
import { checkDocument } from './document-checks.ts'

/** What opening documents came to. */
export interface OpenedDocuments { readonly documents: number; readonly differences: readonly Difference[] }

/** More than these are counted, not listed. */
const LISTED = 100

/**
 * Opens the document of every ticket between two entries: what each is by itself, and that the ticket inside is the one
 * that was booked, to the last character; and the signature of every seal. One document is held at a time.
 */
export async function openDocuments({ store, software }: Pick<LedgerContext, 'store' | 'software'>, { progress, signal }: Call, from: number, to: number): Promise<OpenedDocuments> {
  const found: Difference[] = []
  let [documents, more] = [0, 0]
  for await (const entry of store.entries(from, to)) {
    if (entry.kind !== 'ticket-posted' && entry.kind !== 'period-closed') continue
    const [where, misfits] = entry.kind === 'ticket-posted'
      ? [`document ${entry.seq}, ticket ${entry.body.ticket.number}`, await misfitsOf(entry, store, software.core)]
      : [`entry ${entry.seq}, period ${entry.body.seal.period.name}`, failing(await signatureChecks(entry.body.seal, entry.body.signature))]
    for (const what of misfits) {
      if (found.length < LISTED) found.push({ where, what })
      else more += 1
    }
    if (entry.kind === 'ticket-posted') documents += 1
    progress({ done: entry.seq - from + 1, of: to - from + 1, what: 'documents' })
    await setImmediate()
    signal.throwIfAborted()
  }
  return { documents, differences: more === 0 ? found : [...found, { where: 'the documents', what: `${more} more differences` }] }
}

function failing(checks: readonly Check[]): readonly string[] {
  return checks.filter(({ holds }) => !holds).map(({ check, detail }) => `${check}: it does not; ${detail}`)
}

async function misfitsOf({ body: { ticket, document } }: EntryOf<'ticket-posted'>, store: LedgerStore, core: string): Promise<readonly string[]> {
  try {
    const stored = await store.document(document.sha256)
    if (stored === undefined) return ['it is missing']
    const { ticket: inside, checks, reading } = await checkDocument(stored.bytes, core, () => undefined)
    const other = inside === undefined || canonicalJson(inside) === canonicalJson(ticket) ? undefined : firstDifference(ticket, inside)
    const signed = firstDifference(document.revisions, reading.signatures.map(({ revision }) => revision), ['revisions'])
    return [
      ...(signed === undefined ? [] : [`the ledger names another state of it, first at ${signed.place}: ${signed.stands} stands in the ledger, ${signed.gives} was signed`]),
      ...(other === undefined ? [] : [`the ledger's ticket is not the one that was signed, first at ${other.place}: ${other.stands} stands in the ledger, ${other.gives} was signed`]),
      ...failing(checks),
    ]
  } catch (error) {
    return [`it cannot be opened: ${error instanceof Error ? error.message : String(error)}`]
  }
}
