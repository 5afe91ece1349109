import { objectOf, valueAt, type PdfFile } from './pdf-file.ts'
import { PdfUnreadable, type PdfDictionary, type PdfValue } from './pdf-objects.ts'

/** What a signature says in clear, apart from the cryptographic part. */
export interface SignatureWords {
  /** Name of the form field, unique in the file. */
  readonly field: string
  /** Who signs. */
  readonly name: string
  /** In which capacity, as one sentence. */
  readonly reason: string
  /** UTC instant, whole seconds: `2026-03-14T06:10:00Z`. */
  readonly at: string
}

/** The bytes that one signature appends to a file, with an empty signature, and where the parts lie in the whole file. */
export interface Increment {
  /** One character per byte. */
  readonly text: string
  /** Byte of the whole file at which the hex digits of the signature begin. */
  readonly digitsAt: number
  /** Length of the whole file. */
  readonly end: number
}

/** Hex digits kept for a signature: 8 kB, room for any single certificate. */
export const CONTENTS_DIGITS = 16_384
const BYTE_RANGE_WIDTH = 44

/**
 * The increment that a signature adds to a file: signature dictionary, its field, the first page with the field, the
 * catalogue with the form, cross-reference table and trailer; nothing else. It depends on the file and the words alone,
 * so a verifier writes it again and compares: whatever else stands in an increment is found.
 * Form 1; a later form is added beside it, since signed files are kept for years.
 * @throws PdfUnreadable when the file is not one of ours
 * @source ISO-32000-1 12.8
 * @source EN-319-142-1 5.3
 */
export function signatureIncrement(file: PdfFile, words: SignatureWords): Increment {
  const signature = file.size
  const field = file.size + 1
  const page = firstPage(file)
  const widget = `<< /Type /Annot /Subtype /Widget /FT /Sig /Rect [0 0 0 0] /F 132 /T ${textString(words.field)} /P ${page} 0 R /V ${signature} 0 R >>`
  const before = `<< /Type /Sig /Filter /Adobe.PPKLite /SubFilter /ETSI.CAdES.detached\n/Name ${textString(words.name)}\n/Reason ${textString(words.reason)}\n/M (${pdfInstant(words.at)})\n`
  const blocks: readonly (readonly [number, string])[] = [
    [page, withReference(file, page, ['Annots'], `${field} 0 R`)],
    [file.root, withReference(file, file.root, ['AcroForm', 'Fields'], `${field} 0 R`)],
    [signature, `${before}/ByteRange [${' '.repeat(BYTE_RANGE_WIDTH)}]\n/Contents <${'0'.repeat(CONTENTS_DIGITS)}> >>`],
    [field, widget],
  ]
  const start = file.bytes.length
  const offsets = new Map<number, number>()
  let text = ''
  for (const [number, body] of blocks) {
    offsets.set(number, start + text.length)
    text += `${number} 0 obj\n${body}\nendobj\n`
  }
  const xrefAt = start + text.length
  text += `xref\n${crossReferences(offsets)}trailer\n${trailer(file, field + 1)}\nstartxref\n${xrefAt}\n%%EOF\n`
  return withByteRange(text, start)
}

/** The four numbers of the byte range: all of the file but the signature with its angle brackets. */
export function byteRange(digitsAt: number, end: number): readonly [number, number, number, number] {
  const after = digitsAt + CONTENTS_DIGITS + 1
  return [0, digitsAt - 1, after, end - after]
}

function withByteRange(text: string, start: number): Increment {
  const blank = `/ByteRange [${' '.repeat(BYTE_RANGE_WIDTH)}]`
  const digits = text.indexOf('/Contents <') + '/Contents <'.length
  const end = start + text.length
  const range = byteRange(start + digits, end).join(' ').padEnd(BYTE_RANGE_WIDTH)
  return { text: text.replace(blank, `/ByteRange [${range}]`), digitsAt: start + digits, end }
}

function firstPage(file: PdfFile): number {
  const kids = valueAt(file, objectOf(file, file.root).value, 'Pages', 'Kids')
  const first = kids?.kind === 'array' ? kids.items[0] : undefined
  if (first?.kind !== 'reference') throw new PdfUnreadable('it has no first page')
  return first.number
}

/** An object's text with one more reference in the array under a path of keys; keys that are missing are added at its end. */
function withReference(file: PdfFile, number: number, path: readonly string[], reference: string): string {
  const { value } = objectOf(file, number)
  if (value.kind !== 'dictionary') throw new PdfUnreadable(`object ${number} is no dictionary`)
  let inner: PdfValue = value
  for (const [depth, key] of path.entries()) {
    const next: PdfValue | undefined = inner.kind === 'dictionary' ? inner.entries.get(key) : undefined
    if (next === undefined) {
      if (depth > 0) throw new PdfUnreadable(`object ${number} has /${path[0]} without /${key}`)
      return insertedAt(file, value, value.end - 2, path.length === 1 ? `/${key} [${reference}]\n` : `/${key} << /SigFlags 3 /${path[1]} [${reference}] >>\n`)
    }
    inner = next
  }
  if (inner.kind !== 'array') throw new PdfUnreadable(`/${path.join('/')} of object ${number} is no array`)
  return insertedAt(file, value, inner.end - 1, ` ${reference}`)
}

function insertedAt(file: PdfFile, value: PdfDictionary, at: number, words: string): string {
  return file.text.slice(value.start, at) + words + file.text.slice(at, value.end)
}

function crossReferences(offsets: ReadonlyMap<number, number>): string {
  return [...offsets].sort(([a], [b]) => a - b)
    .map(([number, offset]) => `${number} 1\n${String(offset).padStart(10, '0')} 00000 n \n`).join('')
}

function trailer(file: PdfFile, size: number): string {
  const newest = file.revisions.at(-1)
  const kept = ['Info', 'ID'].map((key) => {
    const value = newest?.trailer.entries.get(key)
    return value ? `/${key} ${file.text.slice(value.start, value.end)}\n` : ''
  })
  return `<< /Size ${size}\n/Root ${file.root} 0 R\n${kept.join('')}/Prev ${newest?.xrefAt} >>`
}

/** Text as UTF-16 in hex, so that every name can be written. */
function textString(text: string): string {
  return `<FEFF${Buffer.from(text, 'utf16le').swap16().toString('hex').toUpperCase()}>`
}

/** The text of a UTF-16 string as {@link signatureIncrement} writes it; undefined for any other. */
export function textOf(value: PdfValue | undefined): string | undefined {
  if (value?.kind !== 'string' || !value.bytes.startsWith('\u00fe\u00ff') || value.bytes.length % 2 !== 0) return undefined
  return Buffer.from(value.bytes.slice(2), 'latin1').swap16().toString('utf16le')
}

function pdfInstant(at: string): string {
  return `D:${at.replace(/[-:T]/g, '')}`
}

/** `D:20260314061000Z` as `2026-03-14T06:10:00Z`; undefined for any other form. */
export function instantOf(value: PdfValue | undefined): string | undefined {
  const parts = value?.kind === 'string' ? /^D:(\d{4})(\d\d)(\d\d)(\d\d)(\d\d)(\d\d)Z$/.exec(value.bytes) : null
  return parts ? `${parts[1]}-${parts[2]}-${parts[3]}T${parts[4]}:${parts[5]}:${parts[6]}Z` : undefined
}
