import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { isOfKind, type Entry } from '../../core/ledger/index.ts'
import { ticketNumber, type Ticket } from '../../core/ticket/index.ts'
import type { LedgerCheck, LedgerStore } from '../../main/store/index.ts'
import { aTicket, productPosting, tankPosting, terminalPosting, ticketPosting, versionFrom, type TicketFigures } from './postings.ts'

/** A folder for one test, and its removal. */
export function aFolder(): { readonly path: string; readonly remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), 'dipledger-test-'))
  return { path, remove: () => { rmSync(path, { recursive: true, force: true }) } }
}

/** Posts a terminal, one tank and one product: entries 1, 2 and 3. */
export function setUp(store: LedgerStore): Promise<readonly Entry[]> {
  return store.append([terminalPosting(), tankPosting(), productPosting()])
}

/** Bytes that stand for a signed PDF. */
export function aDocument(number: string, size = 600): Uint8Array {
  return new TextEncoder().encode(`%PDF-1.7 ${number} `.repeat(size).slice(0, size))
}

/** The next ticket of the tank and product that entries 2 and 3 set, with its document. */
export async function nextTicket(store: LedgerStore, figures: Omit<TicketFigures, 'number'> = {}): Promise<{ readonly ticket: Ticket; readonly document: Uint8Array; readonly head: string }> {
  const [tank, product] = [await store.entry(2), await store.entry(3)]
  if (tank === undefined || product === undefined || !isOfKind(tank, 'tank-set') || !isOfKind(product, 'product-set')) throw new Error('The ledger was not set up')
  const head = await store.head()
  const number = ticketNumber('CPT', await store.ticketCount() + 1)
  return { ticket: aTicket({ number, head, tank: versionFrom(tank), product: versionFrom(product), ...figures }), document: aDocument(number), head: head.hash }
}

/** Posts the next ticket as an operation would. */
export async function postTicket(store: LedgerStore, figures: Omit<TicketFigures, 'number'> = {}): Promise<Entry> {
  const { ticket, document, head } = await nextTicket(store, figures)
  const posting = ticketPosting(ticket, document)
  const [entry] = await store.append([posting], { expectedHead: head, documents: [{ sha256: posting.body.document.sha256, name: `${ticket.number}.pdf`, bytes: document }] })
  if (entry === undefined) throw new Error('Nothing was posted')
  return entry
}

export function check(store: LedgerStore): Promise<LedgerCheck> {
  return store.check(() => undefined, new AbortController().signal)
}
