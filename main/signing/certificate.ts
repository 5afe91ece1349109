import { createHash, webcrypto, X509Certificate } from 'node:crypto'
import type { Identity } from '../../core/ledger/index.ts'

export type KeyKind = 'P-256' | 'RSA'

/** What an identity is, apart from its certificate. */
export interface IdentityWords { readonly id: string; readonly name: string; readonly party: string }

/** The record of an identity from its certificate. */
export function identityOf(words: IdentityWords, certificate: Uint8Array): Identity {
  const { validFromDate, validToDate } = new X509Certificate(certificate)
  return {
    ...words,
    certificate: Buffer.from(certificate).toString('base64'),
    fingerprint: fingerprint(certificate),
    notBefore: instant(validFromDate), notAfter: instant(validToDate),
  }
}

/** SHA-256 of a certificate's DER. */
export function fingerprint(certificate: Uint8Array): string {
  return createHash('sha256').update(certificate).digest('hex')
}

/** Which kind of key a certificate holds, of those that sign here; undefined for any other. */
export function keyKindOf(certificate: Uint8Array): KeyKind | undefined {
  const { asymmetricKeyType, asymmetricKeyDetails } = new X509Certificate(certificate).publicKey
  if (asymmetricKeyType === 'ec' && asymmetricKeyDetails?.namedCurve === 'prime256v1') return 'P-256'
  if (asymmetricKeyType === 'rsa' && (asymmetricKeyDetails?.modulusLength ?? 0) >= 2048) return 'RSA'
  return undefined
}

/** A private key ready to sign, never to be read out again. */
export function signingKey(pkcs8: Uint8Array<ArrayBuffer>, identity: Identity): Promise<webcrypto.CryptoKey> {
  const rsa = keyKindOf(Buffer.from(identity.certificate, 'base64')) === 'RSA'
  const algorithm = rsa ? { name: 'RSASSA-PKCS1-v1_5', hash: 'SHA-256' } : { name: 'ECDSA', namedCurve: 'P-256' }
  return webcrypto.subtle.importKey('pkcs8', pkcs8, algorithm, false, ['sign'])
}

function instant(date: Date): string {
  return `${date.toISOString().slice(0, 19)}Z`
}
