import type { z } from 'zod'
import { canonicalJson, checkLink, entrySchema, GENESIS, sha256Hex, type Entry } from '../../core/ledger/index.ts'
import { documentLineSchema, endSchema, entryLine, entryLineSchema, HEADER_LINE, type End } from './ledger-lines.ts'
import { lineRefusal, linesOfFile, type Line } from './lines-of-file.ts'

const ALTERED = 'it was altered: it is not the canonical text of what it says'

/** An entry read from its line, with the document that belongs to it. */
export interface ReadEntry { readonly line: number; readonly entry: Entry; readonly document: { readonly sha256: string; readonly bytes: Uint8Array } | undefined }

/**
 * The entries of an exported ledger, each with its link and its document verified. The last thing it does is to hold
 * the end against what came before; an end that is missing or differs is refused, as everything is, by its line.
 */
export async function* readLedgerLines(path: string): AsyncIterable<ReadEntry> {
  const lines = linesOfFile(path)[Symbol.asyncIterator]()
  const next = async (expected: string, after: number): Promise<Line> => {
    const { value, done } = await lines.next()
    if (done === true) throw lineRefusal(after + 1, `it is missing: ${expected} is expected`)
    return value
  }
  const header = await next('the header of an exported ledger', 0)
  if (header.text !== HEADER_LINE) throw lineRefusal(1, `it is not ${HEADER_LINE}`, 'this is no exported ledger of a form that this program reads; choose another file, or update the program')
  let before: Pick<Entry, 'seq' | 'hash'> = { seq: 0, hash: GENESIS }
  let documents = 0
  for (let at = 1; ;) {
    const line = await next('an entry or the end', at)
    at = line.number
    if (line.text.startsWith('{"end":')) {
      refuseOtherEnd(line, parsed(line, endSchema).end, { documents, entries: before.seq, head: before.hash })
      const { value: more, done } = await lines.next()
      if (done !== true) throw lineRefusal(more.number, 'something follows the end')
      return
    }
    const entry = entryIn(line, before)
    if (entry.kind === 'ticket-posted') {
      const document = await next(`the document of entry ${entry.seq}`, at)
      at = document.number
      yield { line: line.number, entry, document: documentIn(document, entry.seq, entry.body.document.sha256) }
      documents += 1
    } else yield { line: line.number, entry, document: undefined }
    before = entry
  }
}

function entryIn(line: Line, before: Pick<Entry, 'seq' | 'hash'>): Entry {
  if (line.text.startsWith('{"document":')) throw lineRefusal(line.number, 'a document stands here, though the line before is no ticket')
  const { entry: written, hash } = parsed(line, entryLineSchema)
  const read = entrySchema.safeParse({ ...written, hash })
  if (!read.success) throw lineRefusal(line.number, `it is no entry: ${read.error.issues.map(({ path, message }) => `${path.join('.')} ${message}`).slice(0, 3).join('; ')}`)
  const entry = read.data
  if (entry.seq !== before.seq + 1) throw lineRefusal(line.number, entry.seq <= before.seq ? `entry ${entry.seq} stands here again or out of order; entry ${before.seq + 1} is expected` : `entry ${before.seq + 1} is missing before entry ${entry.seq}`)
  const [difference] = checkLink(entry, before)
  if (difference !== undefined) throw lineRefusal(line.number, `entry ${entry.seq} was altered: its ${difference.part} is ${difference.stands}; the chain gives ${difference.expected}`)
  // a member that nobody reads is in no hash either
  if (entryLine(entry) !== line.text) throw lineRefusal(line.number, ALTERED)
  return entry
}

function documentIn(line: Line, seq: number, sha256: string): { readonly sha256: string; readonly bytes: Uint8Array } {
  if (!line.text.startsWith('{"document":')) throw lineRefusal(line.number, `the document of entry ${seq} is missing`)
  const { document } = parsed(line, documentLineSchema)
  const bytes = Buffer.from(document.bytes, 'base64')
  if (bytes.toString('base64') !== document.bytes) throw lineRefusal(line.number, `the document of entry ${seq} was altered: its base64 is not the one text of its bytes`)
  if (document.seq !== seq) throw lineRefusal(line.number, `the document of entry ${document.seq} stands where that of entry ${seq} is expected`)
  if (sha256Hex(bytes) !== sha256 || document.sha256 !== sha256) throw lineRefusal(line.number, `the document of entry ${seq} was altered: its SHA-256 is ${sha256Hex(bytes)}; the entry gives ${sha256}`)
  return { sha256, bytes }
}

function refuseOtherEnd({ number }: Line, stands: End, expected: End): void {
  for (const part of ['entries', 'documents', 'head'] as const) {
    if (stands[part] !== expected[part]) throw lineRefusal(number, `the end gives ${stands[part]} for ${part}; the lines before give ${expected[part]}`)
  }
}

/** A line read strictly: one that is not the canonical text of what it says was altered. */
function parsed<S extends z.ZodType>({ number, text }: Line, schema: S): z.output<S> {
  const value = jsonOf(text)
  const read = schema.safeParse(value)
  if (!read.success) throw lineRefusal(number, 'it is no line of an exported ledger')
  if (canonicalOf(value, number) !== text) throw lineRefusal(number, ALTERED)
  return read.data
}

/** What is nested without end, half a character and a number too large to be one have no canonical text. */
function canonicalOf(value: unknown, number: number): string {
  try {
    return canonicalJson(value)
  } catch (error) {
    throw lineRefusal(number, `it has no canonical text: ${error instanceof Error ? error.message : String(error)}`)
  }
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
