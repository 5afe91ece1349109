import { z } from 'zod'
import { ENTRY_BODIES, textAroundBody, writePosting, type Posting, type WrittenPosting } from '../../core/ledger/index.ts'
import { quickSha256 } from './link-hash.ts'
import type { StoredDocument } from './store.ts'

/** A document with the SHA-256 of the bytes that came. */
export interface HashedDocument { readonly document: StoredDocument; readonly found: string }

/** A posting that is of its form, in UTF-8: its body, and the text that is hashed up to its place in the chain. */
export interface PreparedPosting { readonly written: WrittenPosting; readonly body: Uint8Array; readonly text: Uint8Array }

/** What is posted, with all done that needs no ledger. */
export interface Prepared { readonly postings: readonly PreparedPosting[]; readonly documents: readonly HashedDocument[] }

/**
 * Holds bodies against their form, writes them down and hashes documents, before the ledger is locked for it.
 * @throws on a body that has anything more or less than the schema of its kind says
 */
export function prepare(postings: readonly Posting[], documents: readonly StoredDocument[]): Prepared {
  postings.forEach(refuseWrongBody)
  return { postings: postings.map(preparePosting), documents: documents.map((document) => ({ document, found: quickSha256(document.bytes) })) }
}

/** A character takes at most three bytes for each of its units. */
const BYTES_PER_UNIT = 3

function preparePosting(posting: Posting): PreparedPosting {
  const written = writePosting(posting)
  const [before, after] = textAroundBody({ ...posting, origin: written.origin })
  // written into room that is enough: to ask first how much it takes costs as much again
  const room = Buffer.allocUnsafe(BYTES_PER_UNIT * (before.length + written.body.length + after.length))
  const begins = room.write(before, 'utf8')
  const ends = begins + room.write(written.body, begins, 'utf8')
  return { written, body: room.subarray(begins, ends), text: room.subarray(0, ends + room.write(after, ends, 'utf8')) }
}

function refuseWrongBody({ kind, body }: Posting): void {
  const read = ENTRY_BODIES[kind].safeParse(body)
  if (!read.success) throw new Error(`The body of a ${kind} entry is not of its form: ${z.prettifyError(read.error)}`)
}
