import { createHash } from 'node:crypto'
import { Refused } from '../../core/refusal/index.ts'
import { readCms } from './cms.ts'
import { objectOf, openPdf, valueAt, type PdfFile } from './pdf-file.ts'
import { signedDigest } from './pdf-signature.ts'
import { PdfUnreadable, type PdfValue } from './pdf-objects.ts'
import { CONTENTS_DIGITS, instantOf, signatureIncrement, textOf, type Increment, type SignatureWords } from './signature-increment.ts'

/** One signature as it was found, and everything that is wrong with it. */
export interface SignatureReading extends SignatureWords {
  /** SHA-256 of the certificate's DER; empty where none could be read. */
  readonly certificate: string
  /** SHA-256 of the file up to and with this signature. */
  readonly revision: string
  readonly problems: readonly string[]
}

export interface SignaturesReading {
  /** Oldest first. */
  readonly signatures: readonly SignatureReading[]
  /** What is wrong with the file as a whole. */
  readonly problems: readonly string[]
  /** The document before its first signature. */
  readonly unsigned: PdfFile
}

/** Larger than any ticket with its capacity table. */
export const LARGEST_DOCUMENT = 20 * 1024 * 1024

/**
 * Reads the signatures of a document from its form, as a viewer does, and checks that each covers everything before it,
 * that nothing but signatures was appended, and that the last one reaches the end of the file.
 * @throws Refused `document-unreadable` where the file is not of the form that this program writes
 * @source ISO-32000-1 12.8
 */
export async function readSignatures(pdf: Uint8Array, path = 'file'): Promise<SignaturesReading> {
  if (pdf.length > LARGEST_DOCUMENT) throw unreadable(path, `it is ${pdf.length} bytes long, the limit is ${LARGEST_DOCUMENT}`)
  try {
    return await signaturesOf(openPdf(pdf))
  } catch (error) {
    if (error instanceof PdfUnreadable) throw unreadable(path, error.message)
    throw error
  }
}

function unreadable(path: string, why: string): Refused {
  return new Refused([{ code: 'document-unreadable', path, value: 'this file', limit: why, clause: 'ISO-32000-1 7.5' }])
}

async function signaturesOf(file: PdfFile): Promise<SignaturesReading> {
  const fields = valueAt(file, objectOf(file, file.root).value, 'AcroForm', 'Fields')
  const found = fields?.kind === 'array' ? fields.items : []
  if (found.length > file.revisions.length) throw new PdfUnreadable(`its form has ${found.length} fields, but it was saved ${file.revisions.length} times`)
  const increments = file.revisions.slice(1)
  const signatures: SignatureReading[] = []
  for (const [place, field] of found.entries()) signatures.push(await signatureOf(file, field, place + 1))
  const problems: string[] = []
  if (found.length !== 2) problems.push(`there are ${found.length} signatures, not two`)
  if (increments.length !== found.length) problems.push(`the file was added to ${increments.length} times for ${found.length} signatures`)
  if (new Set(signatures.map((one) => one.certificate)).size !== signatures.length) problems.push('the same certificate signed twice')
  if (file.revisions.at(-1)?.end !== file.bytes.length) problems.push('something stands after the last signature')
  return { signatures, problems, unsigned: openPdf(file.bytes.subarray(0, file.revisions[0]?.end)) }
}

/** The signature that the revision at a place must hold: the increment is written again from its words and compared. */
async function signatureOf(file: PdfFile, field: PdfValue, place: number): Promise<SignatureReading> {
  const dictionary = valueAt(file, field, 'V')
  const words: SignatureWords = {
    field: textOf(valueAt(file, field, 'T')) ?? '',
    name: textOf(dictionary && valueAt(file, dictionary, 'Name')) ?? '',
    reason: textOf(dictionary && valueAt(file, dictionary, 'Reason')) ?? '',
    at: instantOf(dictionary && valueAt(file, dictionary, 'M')) ?? '',
  }
  const before = file.revisions[place - 1]
  const own = file.revisions[place]
  if (!before || !own) return { ...words, certificate: '', revision: '', problems: ['no part of the file belongs to it'] }
  const increment = signatureIncrement(openPdf(file.bytes.subarray(0, before.end)), words)
  const revision = createHash('sha256').update(file.bytes.subarray(0, own.end)).digest('hex')
  const problems = sameButDigits(file, increment, before.end, own.end) ? [] : ['something other than this signature was added with it']
  const digits = file.text.slice(increment.digitsAt, increment.digitsAt + CONTENTS_DIGITS)
  if (!/^[0-9a-f]*$/.test(digits)) return { ...words, certificate: '', revision, problems: [...problems, 'its signature is not written in hex digits'] }
  const cms = await readCms(new Uint8Array(Buffer.from(digits, 'hex')), signedDigest(file.bytes, increment.digitsAt, own.end))
  if (!cms) return { ...words, certificate: '', revision, problems: [...problems, 'its signature cannot be read'] }
  if (!cms.holds) problems.push('its signature does not fit the bytes before it')
  const signedAt = new Date(words.at)
  if (!(signedAt >= cms.validFrom && signedAt <= cms.validTo)) problems.push('its certificate was not valid when it was made')
  return { ...words, certificate: cms.certificate, revision, problems }
}

function sameButDigits(file: PdfFile, increment: Increment, start: number, end: number): boolean {
  const digits = increment.digitsAt - start
  const found = file.text.slice(start, end)
  return increment.end === end && found.slice(0, digits) === increment.text.slice(0, digits)
    && found.slice(digits + CONTENTS_DIGITS) === increment.text.slice(digits + CONTENTS_DIGITS)
}
