import { PdfUnreadable, readValue, skipBlanks, type PdfDictionary, type PdfValue } from './pdf-objects.ts'

/** One section of the cross-reference chain: what one saving of the file wrote. */
export interface Revision {
  /** Object number → byte offset, for the objects this revision wrote. */
  readonly offsets: ReadonlyMap<number, number>
  readonly trailer: PdfDictionary
  /** Byte after the end-of-file mark of this revision. */
  readonly end: number
  readonly xrefAt: number
}

export interface PdfObject {
  readonly value: PdfValue
  /** The stream as it stands in the file, not yet inflated. */
  readonly stream: Uint8Array | undefined
}

/** A PDF read as a viewer reads it: from its last cross-reference section backwards. */
export interface PdfFile {
  readonly bytes: Uint8Array
  /** One character per byte. */
  readonly text: string
  /** Oldest first. */
  readonly revisions: readonly Revision[]
  /** Largest object number ever used plus one. */
  readonly size: number
  readonly root: number
  /** Objects read so far. */
  readonly read: Map<number, PdfObject>
}

const MOST_REVISIONS = 16
const END = /startxref\n(\d{1,10})\n%%EOF\n/y
const SUBSECTION = /(\d{1,7}) (\d{1,7})\n/y
const ENTRY = /(\d{10}) 0{5} n \n|\d{10} \d{5} f \n/y
const OBJECT = /(\d{1,10}) 0 obj\n/y

/**
 * Opens a PDF of the form this program writes: version 1.7, classic cross-reference tables, nothing after the last
 * end-of-file mark.
 * @throws PdfUnreadable
 * @source ISO-32000-1 7.5
 */
export function openPdf(bytes: Uint8Array): PdfFile {
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).toString('latin1')
  if (!text.startsWith('%PDF-1.7\n')) throw new PdfUnreadable('it does not begin as PDF 1.7')
  const tail = text.lastIndexOf('startxref\n')
  const mark = tail < 0 ? null : sticky(END, text, tail)
  if (!mark || tail + mark[0].length !== text.length) throw new PdfUnreadable('it does not end at its end-of-file mark')
  const revisions = readRevisions(text, Number(mark[1]))
  const newest = revisions.at(-1)
  const root = newest?.trailer.entries.get('Root')
  const size = newest?.trailer.entries.get('Size')
  if (root?.kind !== 'reference' || size?.kind !== 'number') throw new PdfUnreadable('its trailer names no root')
  return { bytes, text, revisions, size: size.value, root: root.number, read: new Map() }
}

function readRevisions(text: string, last: number): readonly Revision[] {
  const revisions: Revision[] = []
  for (let at: number | undefined = last; at !== undefined;) {
    if (revisions.length === MOST_REVISIONS) throw new PdfUnreadable(`it was saved more than ${MOST_REVISIONS} times`)
    const revision = readRevision(text, at)
    revisions.unshift(revision)
    const previous = revision.trailer.entries.get('Prev')
    if (previous !== undefined && (previous.kind !== 'number' || previous.value >= at)) throw new PdfUnreadable('its cross-reference chain does not go backwards')
    at = previous?.value
  }
  return revisions
}

function readRevision(text: string, xrefAt: number): Revision {
  if (!text.startsWith('xref\n', xrefAt)) throw new PdfUnreadable(`no cross-reference table at byte ${xrefAt}`)
  const offsets = new Map<number, number>()
  let at = xrefAt + 5
  for (let head = sticky(SUBSECTION, text, at); head; head = sticky(SUBSECTION, text, at)) {
    at += head[0].length
    for (let number = Number(head[1]), left = Number(head[2]); left > 0; number++, left--) {
      const entry = sticky(ENTRY, text, at)
      if (!entry) throw new PdfUnreadable(`no cross-reference entry at byte ${at}`)
      if (offsets.has(number)) throw new PdfUnreadable(`object ${number} stands twice in one cross-reference table`)
      if (entry[1] !== undefined) offsets.set(number, Number(entry[1]))
      at += entry[0].length
    }
  }
  if (!text.startsWith('trailer\n', at)) throw new PdfUnreadable(`no trailer at byte ${at}`)
  const trailer = readValue(text, at + 8)
  if (trailer.kind !== 'dictionary') throw new PdfUnreadable(`no trailer at byte ${at}`)
  const mark = sticky(END, text, trailer.end + 1)
  if (!mark || Number(mark[1]) !== xrefAt) throw new PdfUnreadable(`no end-of-file mark at byte ${trailer.end}`)
  return { offsets, trailer, end: trailer.end + 1 + mark[0].length, xrefAt }
}

/**
 * An object as the newest revision that wrote it has it.
 * @throws PdfUnreadable
 */
export function objectOf(file: PdfFile, number: number): PdfObject {
  const known = file.read.get(number)
  if (known) return known
  const object = readObject(file, number)
  file.read.set(number, object)
  return object
}

function readObject(file: PdfFile, number: number): PdfObject {
  const offset = file.revisions.findLast((revision) => revision.offsets.has(number))?.offsets.get(number)
  const head = offset === undefined ? null : sticky(OBJECT, file.text, offset)
  if (offset === undefined || !head || Number(head[1]) !== number) throw new PdfUnreadable(`object ${number} is not there`)
  const value = readValue(file.text, offset + head[0].length)
  const after = skipBlanks(file.text, value.end)
  if (file.text.startsWith('endobj\n', after)) return { value, stream: undefined }
  if (value.kind !== 'dictionary' || !file.text.startsWith('stream\n', after)) throw new PdfUnreadable(`object ${number} has no end`)
  const length = value.entries.get('Length')
  const from = after + 7
  if (length?.kind !== 'number' || !file.text.startsWith('\nendstream\nendobj\n', from + length.value)) throw new PdfUnreadable(`the stream of object ${number} has another length`)
  return { value, stream: file.bytes.subarray(from, from + length.value) }
}

/**
 * The value under a chain of keys and indexes, references followed; undefined where it is not there.
 * @throws PdfUnreadable
 */
export function valueAt(file: PdfFile, from: PdfValue, ...path: readonly (string | number)[]): PdfValue | undefined {
  let value: PdfValue | undefined = followed(file, from)
  for (const step of path) {
    if (value?.kind === 'dictionary' && typeof step === 'string') value = value.entries.get(step)
    else if (value?.kind === 'array' && typeof step === 'number') value = value.items[step]
    else return undefined
    value = value && followed(file, value)
  }
  return value
}

function followed(file: PdfFile, value: PdfValue): PdfValue {
  if (value.kind !== 'reference') return value
  const target = objectOf(file, value.number).value
  if (target.kind === 'reference') throw new PdfUnreadable(`object ${value.number} is only a reference`)
  return target
}

function sticky(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at
  return pattern.exec(text)
}
