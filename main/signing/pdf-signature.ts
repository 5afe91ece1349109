import { createHash, type webcrypto } from 'node:crypto'
import type { Identity } from '../../core/ledger/index.ts'
import type { Signer } from '../../core/ticket/index.ts'
import { signCms } from './cms.ts'
import { openPdf } from './pdf-file.ts'
import { byteRange, CONTENTS_DIGITS, signatureIncrement } from './signature-increment.ts'

export interface SignAs {
  readonly key: webcrypto.CryptoKey
  readonly identity: Identity
  /** Name of the signature field, another one for each signature: `signature-1`. */
  readonly field: string
  /** UTC instant of signing. */
  readonly at: string
  readonly role: Signer['role']
}

/** What a signature states as its reason, by role. */
export const SIGNING_REASONS: { readonly [R in Signer['role']]: string } = {
  terminal: 'Signed for the terminal: the quantity on this ticket is agreed',
  counterparty: 'Signed for the counterparty: the quantity on this ticket is agreed',
  inspector: 'Signed by the inspector: the gauges on this ticket were witnessed',
}

/**
 * Appends one signature to a document; the bytes before it stay as they are. PAdES baseline B-B: the instant is the
 * signer's own statement, there is no time-stamp authority.
 * @throws PdfUnreadable when the document is not one of ours
 * @source EN-319-142-1 6.3
 */
export async function signDocument(pdf: Uint8Array, as: SignAs): Promise<Uint8Array> {
  const at = wholeSeconds(as.at)
  const increment = signatureIncrement(openPdf(pdf), { field: as.field, name: as.identity.name, reason: SIGNING_REASONS[as.role], at })
  const signed = Buffer.concat([pdf, Buffer.from(increment.text, 'latin1')])
  const cms = await signCms(signedDigest(signed, increment.digitsAt, increment.end), as.key, new Uint8Array(Buffer.from(as.identity.certificate, 'base64')))
  const digits = Buffer.from(cms).toString('hex').padEnd(CONTENTS_DIGITS, '0')
  if (digits.length > CONTENTS_DIGITS) throw new Error(`A signature of ${cms.length} bytes does not fit; the certificate of ${as.identity.id} is too long.`)
  signed.write(digits, increment.digitsAt, 'latin1')
  return new Uint8Array(signed)
}

/** SHA-256 of everything up to `end` but the signature with its angle brackets. */
export function signedDigest(pdf: Uint8Array, digitsAt: number, end: number): Uint8Array<ArrayBuffer> {
  const [, before, after, rest] = byteRange(digitsAt, end)
  return new Uint8Array(createHash('sha256').update(pdf.subarray(0, before)).update(pdf.subarray(after, after + rest)).digest())
}

/** An RFC 3339 instant in UTC without fractions of a second, as a PDF states it. */
function wholeSeconds(at: string): string {
  return `${new Date(at).toISOString().slice(0, 19)}Z`
}
