import { inflateSync } from 'node:zlib'
import { objectOf, openPdf, PdfUnreadable, type PdfFile } from '../signing/index.ts'

const LARGEST_STREAM = 16 * 1024 * 1024

/**
 * Whether a document is the one that was drawn: the same bytes, or the same objects with the same contents once
 * unpacked, since two builds of the compressor may pack alike contents in different bytes.
 */
export function isDrawnAs(file: PdfFile, drawn: Uint8Array): boolean {
  if (Buffer.compare(file.bytes, drawn) === 0) return true
  try {
    return sameObjects(file, openPdf(drawn))
  } catch (error) {
    if (error instanceof PdfUnreadable) return false
    throw error
  }
}

function sameObjects(one: PdfFile, other: PdfFile): boolean {
  const [first, second] = [one.revisions, other.revisions]
  const [own, theirs] = [first[0], second[0]]
  if (first.length !== 1 || second.length !== 1 || !own || !theirs || own.offsets.size !== theirs.offsets.size) return false
  return textOf(one, own.trailer) === textOf(other, theirs.trailer)
    && [...own.offsets.keys()].every((number) => theirs.offsets.has(number) && contents(one, number) === contents(other, number))
}

/** An object as text: its value without the packed length, and its stream unpacked. */
function contents(file: PdfFile, number: number): string {
  const { value, stream } = objectOf(file, number)
  if (!stream || value.kind !== 'dictionary') return textOf(file, value)
  const length = value.entries.get('Length')
  if (!length) return textOf(file, value)
  const words = file.text.slice(value.start, length.start) + file.text.slice(length.end, value.end)
  return words + Buffer.from(value.entries.has('Filter') ? unpacked(stream) : stream).toString('latin1')
}

function unpacked(stream: Uint8Array): Uint8Array {
  try {
    return inflateSync(stream, { maxOutputLength: LARGEST_STREAM })
  } catch {
    throw new PdfUnreadable('a stream cannot be unpacked')
  }
}

function textOf(file: PdfFile, { start, end }: { readonly start: number; readonly end: number }): string {
  return file.text.slice(start, end)
}
