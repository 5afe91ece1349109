import 'reflect-metadata'
import { randomBytes } from 'node:crypto'
import { KeyUsageFlags, KeyUsagesExtension, X509CertificateGenerator, SubjectKeyIdentifierExtension } from '@peculiar/x509'
import type { Identity } from '../../core/ledger/index.ts'
import { orRefuse } from '../../core/refusal/index.ts'
import { identityOf, type IdentityWords } from './certificate.ts'
import { checkPassphrase, sealKey } from './vault.ts'

/**
 * ECDSA on P-256: as strong as RSA-3072 (NIST SP 800-57), made in milliseconds where RSA takes half a second, and its
 * signatures are a tenth as long. Every common PDF verifier knows it. Imported identities may hold either.
 */
const KEY = { name: 'ECDSA', namedCurve: 'P-256' } as const
const YEARS_VALID = 3

export interface ProtectedIdentity {
  readonly identity: Identity
  /** The private key under its passphrase, for the store. */
  readonly protectedKey: string
}

export interface NewIdentity extends IdentityWords {
  readonly passphrase: string
  /** UTC instant from which it is valid. */
  readonly at: string
  /** Where the passphrase stood, for the finding. */
  readonly path?: string
  /** scrypt N; the vault's own when absent. */
  readonly cost?: number
}

/**
 * Makes a signing identity: a key pair and a certificate signed with itself, valid three years, for signatures that
 * bind the signer.
 * @throws Refused `passphrase-too-short`
 */
export async function createIdentity(wanted: NewIdentity): Promise<ProtectedIdentity> {
  const passphrase = orRefuse(checkPassphrase(wanted.passphrase, wanted.path ?? 'passphrase'))
  const notBefore = new Date(wanted.at)
  const notAfter = new Date(notBefore)
  notAfter.setUTCFullYear(notAfter.getUTCFullYear() + YEARS_VALID)
  const keys = await crypto.subtle.generateKey(KEY, true, ['sign', 'verify'])
  const certificate = await X509CertificateGenerator.createSelfSigned({
    serialNumber: serialNumber(),
    name: [{ CN: [wanted.name] }, { O: [wanted.party] }],
    notBefore, notAfter, keys,
    signingAlgorithm: { name: 'ECDSA', hash: 'SHA-256' },
    extensions: [
      new KeyUsagesExtension(KeyUsageFlags.digitalSignature | KeyUsageFlags.nonRepudiation, true),
      await SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  })
  const pkcs8 = new Uint8Array(await crypto.subtle.exportKey('pkcs8', keys.privateKey))
  const { id, name, party } = wanted
  return {
    identity: identityOf({ id, name, party }, new Uint8Array(certificate.rawData)),
    protectedKey: await sealKey(pkcs8, id, passphrase, wanted.cost),
  }
}

/** 128 random bits, positive. */
function serialNumber(): string {
  const bytes = randomBytes(16)
  bytes.writeUInt8((bytes.readUInt8(0) & 0x3f) | 0x40, 0)
  return bytes.toString('hex')
}
