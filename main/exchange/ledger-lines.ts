import { z } from 'zod'
import { canonicalJson, entryText, writeEntry, type Entry } from '../../core/ledger/index.ts'
import type { StoredDocument } from '../store/index.ts'

const FORM = 'dipledger-ledger'
const VERSION = 1
const hash = z.string().regex(/^[0-9a-f]{64}$/)
const count = z.number().int().min(0)

/** First line: what this is. */
export const headerSchema = z.strictObject({ ledger: z.strictObject({ form: z.literal(FORM), version: z.literal(VERSION) }) })
/** An entry without its hash, as it was hashed, and the hash. */
export const entryLineSchema = z.strictObject({ entry: z.record(z.string(), z.unknown()), hash })
/** The signed document of the ticket on the line before. */
export const documentLineSchema = z.strictObject({ document: z.strictObject({ bytes: z.base64(), seq: count, sha256: hash }) })
/** Last line: where the chain ends, and how much there is. */
export const endSchema = z.strictObject({ end: z.strictObject({ documents: count, entries: count, head: hash }) })
export type End = z.infer<typeof endSchema>['end']

/** Every line is canonical JSON of RFC 8785, so that a ledger has one text only. */
export const HEADER_LINE = canonicalJson({ ledger: { form: FORM, version: VERSION } })

/** The line of an entry: its text stands in it exactly as it was hashed. */
export function entryLine(entry: Entry): string {
  return `{"entry":${entryText(writeEntry(entry, entry))},"hash":"${entry.hash}"}`
}

/** The line of the document of a ticket entry. */
export function documentLine(seq: number, { sha256, bytes }: StoredDocument): string {
  return canonicalJson({ document: { bytes: Buffer.from(bytes).toString('base64'), seq, sha256 } })
}

export function endLine(end: End): string {
  return canonicalJson({ end })
}
