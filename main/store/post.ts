import type { Kysely } from 'kysely'
import { placeEntry, type Entry } from '../../core/ledger/index.ts'
import { insertEntry } from './entry-rows.ts'
import { insertRow } from './insert-rows.ts'
import { knownIn } from './known.ts'
import { entryHash } from './link-hash.ts'
import { documentMisfits, misfits } from './posting-rules.ts'
import type { HashedDocument, Prepared } from './prepare.ts'
import { projectEntry } from './projections.ts'
import type { Schema } from './schema.ts'
import { putKey, putVerifier } from './side-tables.ts'
import { HeadMoved, type Head, type Secrets, type StoredDocument } from './store.ts'

/** What is posted in one transaction. */
export interface Batch extends Prepared { readonly expectedHead: string | undefined; readonly secrets: Secrets }

/** Something done in one transaction that holds the write lock; batches are put down in it. */
export type Writing<T> = (held: Kysely<Schema>, put: (batch: Batch) => Promise<readonly Entry[]>) => Promise<T>

/** Places a batch behind the head of the chain; to be called in a transaction that holds the write lock. */
export async function postBatch(db: Kysely<Schema>, from: Head, { postings, expectedHead, documents, secrets }: Batch): Promise<readonly Entry[]> {
  let head = from
  if (expectedHead !== undefined && expectedHead !== head.hash) throw new HeadMoved()
  const waiting = new Map(documents.map((one) => [one.document.sha256, one]))
  const entries: Entry[] = []
  for (const { written: posting, body, text } of postings) {
    const { entry, written } = placeEntry(posting, { seq: head.seq + 1, previous: head.hash }, (one) => entryHash(one, text))
    const document = documentFor(entry, waiting)
    await refuseMisfit(db, entry, head)
    await insertEntry(db, { ...written, hash: entry.hash, origin: written.origin ?? null }, body)
    if (document !== undefined) await insertRow(db, 'document', { seq: entry.seq, sha256: document.sha256, bytes: document.bytes })
    await projectEntry(db, entry)
    entries.push(entry)
    head = { seq: entry.seq, hash: entry.hash }
  }
  const [stray] = waiting.values()
  if (stray !== undefined) throw new Error(`No posting names the document ${stray.document.name} (${stray.document.sha256})`)
  if (secrets.passphrase !== undefined) await putVerifier(db, secrets.passphrase.person, secrets.passphrase.verifier)
  if (secrets.key !== undefined) await putKey(db, secrets.key.identity, secrets.key.key)
  return entries
}

/** The name under which the document of a ticket is handed out. */
export function documentName(number: string): string {
  return `${number}.pdf`
}

/** The document that a ticket entry names; an entry of any other kind has none. */
function documentFor(entry: Entry, waiting: Map<string, HashedDocument>): StoredDocument | undefined {
  if (entry.kind !== 'ticket-posted') return undefined
  const { number } = entry.body.ticket
  const { document, found } = waiting.get(entry.body.document.sha256) ?? {}
  if (document === undefined || found === undefined) throw new Error(`${number} comes without its signed document`)
  waiting.delete(document.sha256)
  const wrong = documentMisfits(entry, { sha256: found, bytes: document.bytes.length })
  if (wrong.length > 0) throw new Error(`${number}: ${wrong.join('; ')}`)
  if (document.name !== documentName(number)) throw new Error(`The document of ${number} is named ${document.name}, not ${documentName(number)}`)
  return document
}

async function refuseMisfit(db: Kysely<Schema>, entry: Entry, head: Head): Promise<void> {
  const found = await misfits(entry, knownIn(db, head))
  if (found.length > 0) throw new Error(`The ${entry.kind} entry does not fit the ledger: ${found.join('; ')}`)
}
