import { createHash, type webcrypto } from 'node:crypto'
import type { Identity } from '../../core/ledger/index.ts'
import { readCms, signCms, type CmsReading } from './cms.ts'

/**
 * A signature that stands beside a text: CMS over its UTF-8, as base64 DER.
 * @source RFC-5652 5
 */
export async function signText(text: string, key: webcrypto.CryptoKey, { certificate }: Pick<Identity, 'certificate'>): Promise<string> {
  return Buffer.from(await signCms(digestOf(text), key, new Uint8Array(Buffer.from(certificate, 'base64')))).toString('base64')
}

/**
 * Reads a signature that stands beside a text, and whether it fits.
 * @returns undefined where it is no signature
 */
export async function readTextSignature(signature: string, text: string): Promise<CmsReading | undefined> {
  return readCms(new Uint8Array(Buffer.from(signature, 'base64')), digestOf(text))
}

function digestOf(text: string): Uint8Array<ArrayBuffer> {
  return new Uint8Array(createHash('sha256').update(text, 'utf8').digest())
}
