import { inflateSync } from 'node:zlib'
import type { z } from 'zod'
import { canonicalJson } from '../../core/ledger/index.ts'
import { ticketSchema, type Ticket } from '../../core/ticket/index.ts'
import { objectOf, PdfUnreadable, valueAt, type PdfFile } from '../signing/index.ts'
import { BASIS_FILE, basisSchema, TICKET_FILE, type Basis } from './ticket-basis.ts'

/** What a document carries inside, or why it cannot be taken. */
export type TicketData = { readonly ticket: Ticket; readonly basis: Basis } | { readonly problem: string }

/** Room for the longest remarks and worksheets, and for a capacity table of 100 000 lines. */
const LARGEST: Readonly<Record<string, number>> = { [TICKET_FILE]: 1024 * 1024, [BASIS_FILE]: 8 * 1024 * 1024 }
/** Longer than anything a ticket holds. */
const LONGEST_TEXT = 2000

/** The data inside a document: exactly the two files, each in the one canonical form of what its schema admits. */
export function ticketDataOf(file: PdfFile): TicketData {
  try {
    const attachments = attachmentsOf(file)
    return {
      ticket: admitted(TICKET_FILE, ticketSchema, attachments.get(TICKET_FILE)),
      basis: admitted(BASIS_FILE, basisSchema, attachments.get(BASIS_FILE)),
    }
  } catch (error) {
    if (error instanceof PdfUnreadable) return { problem: error.message }
    throw error
  }
}

function attachmentsOf(file: PdfFile): ReadonlyMap<string, string> {
  const names = valueAt(file, objectOf(file, file.root).value, 'Names', 'EmbeddedFiles', 'Names')
  if (names?.kind !== 'array' || names.items.length !== 4) throw new PdfUnreadable('it does not carry two files')
  const found = new Map<string, string>()
  for (const at of [0, 2]) {
    const name = names.items[at]
    const embedded = valueAt(file, names, at + 1, 'EF')
    const stream = embedded?.kind === 'dictionary' ? embedded.entries.get('F') : undefined
    if (name?.kind !== 'string' || stream?.kind !== 'reference') throw new PdfUnreadable('a file inside it has no contents')
    const limit = LARGEST[name.bytes]
    if (limit === undefined) throw new PdfUnreadable(`it carries a file that is not a ticket's: ${name.bytes.slice(0, 40)}`)
    found.set(name.bytes, inflated(file, stream.number, name.bytes, limit))
  }
  return found
}

function inflated(file: PdfFile, number: number, name: string, limit: number): string {
  const { stream } = objectOf(file, number)
  if (!stream) throw new PdfUnreadable(`${name} has no contents`)
  try {
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(inflateSync(stream, { maxOutputLength: limit }))
  } catch {
    throw new PdfUnreadable(`${name} cannot be unpacked within ${limit} bytes`)
  }
}

function admitted<T>(name: string, schema: z.ZodType<T>, text: string | undefined): T {
  if (text === undefined) throw new PdfUnreadable(`${name} is missing`)
  const parsed = schema.safeParse(fromJson(name, text))
  if (!parsed.success) {
    const issue = parsed.error.issues[0]
    throw new PdfUnreadable(`${name} is not of the expected form at ${issue?.path.join('.') || 'its top'}`)
  }
  if (!isCanonical(text, parsed.data)) throw new PdfUnreadable(`${name} is not in canonical form`)
  if (hasLongText(parsed.data)) throw new PdfUnreadable(`${name} holds a text of more than ${LONGEST_TEXT} characters`)
  return parsed.data
}

function isCanonical(text: string, value: unknown): boolean {
  try {
    return canonicalJson(value) === text
  } catch {
    // Half a surrogate pair, for instance, has no canonical form.
    return false
  }
}

function fromJson(name: string, text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    throw new PdfUnreadable(`${name} is not JSON`)
  }
}

function hasLongText(value: unknown): boolean {
  if (typeof value === 'string') return value.length > LONGEST_TEXT
  return typeof value === 'object' && value !== null && Object.values(value).some(hasLongText)
}
