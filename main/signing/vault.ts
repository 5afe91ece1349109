import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto'
import { z } from 'zod'
import { accepted, refused, type Outcome } from '../../core/refusal/index.ts'
import { derived, PASSPHRASE_COST } from './derive.ts'

/** NIST SP 800-63B asks for 8 or more; there is no lock-out after wrong guesses on a copied file, so the house asks for 10. */
export const SHORTEST_PASSPHRASE = 10

const base64 = z.base64()
/** A private key as the store keeps it. The cost stands in it, so that old keys open after the default has grown. */
const envelopeSchema = z.strictObject({
  form: z.literal('dipledger-key-1'),
  N: z.number().int().min(2 ** 10).max(2 ** 20).refine((cost) => Number.isInteger(Math.log2(cost))),
  r: z.literal(8), p: z.literal(1),
  salt: base64, nonce: base64, tag: base64, sealed: base64,
})

/** A passphrase that may protect a key. Refuses `passphrase-too-short`. @source NIST-SP-800-63B 5.1.1.2 */
export function checkPassphrase(passphrase: string, path: string): Outcome<string> {
  const length = [...passphrase.normalize('NFKC')].length
  if (length >= SHORTEST_PASSPHRASE) return accepted(passphrase)
  return refused({ code: 'passphrase-too-short', path, value: String(length), limit: `use ${SHORTEST_PASSPHRASE} or more, several words for instance`, clause: 'NIST-SP-800-63B 5.1.1.2' })
}

/**
 * Encrypts a private key under a passphrase: scrypt, then AES-256-GCM bound to the identity.
 * @param key PKCS #8
 * @param owner identity id; the key does not open under another
 * @param cost scrypt N, written into the result
 */
export async function sealKey(key: Uint8Array, owner: string, passphrase: string, cost = PASSPHRASE_COST): Promise<string> {
  const salt = randomBytes(16)
  const nonce = randomBytes(12)
  const cipher = createCipheriv('aes-256-gcm', await derived(passphrase, salt, cost), nonce).setAAD(Buffer.from(owner, 'utf8'))
  const sealed = Buffer.concat([cipher.update(key), cipher.final()])
  const text = (bytes: Buffer): string => bytes.toString('base64')
  return JSON.stringify({ form: 'dipledger-key-1', N: cost, r: 8, p: 1, salt: text(salt), nonce: text(nonce), tag: text(cipher.getAuthTag()), sealed: text(sealed) })
}

/** The private key, PKCS #8. Refuses `passphrase-wrong`, and `ledger-damaged` for an envelope that cannot be read. */
export async function openKey(envelope: string, owner: string, passphrase: string, path: string): Promise<Outcome<Uint8Array<ArrayBuffer>>> {
  const parsed = envelopeSchema.safeParse(fromJson(envelope))
  if (!parsed.success) return refused({ code: 'ledger-damaged', path, value: `the protected key of ${owner} cannot be read`, limit: 'restore it from a backup, or import the identity again', clause: 'HOUSE keys' })
  const { N, salt, nonce, tag, sealed } = parsed.data
  const bytes = (text: string): Buffer => Buffer.from(text, 'base64')
  try {
    const cipher = createDecipheriv('aes-256-gcm', await derived(passphrase, bytes(salt), N), bytes(nonce), { authTagLength: 16 })
      .setAAD(Buffer.from(owner, 'utf8')).setAuthTag(bytes(tag))
    return accepted(new Uint8Array(Buffer.concat([cipher.update(bytes(sealed)), cipher.final()])))
  } catch {
    // The cipher tells a wrong passphrase and an altered key in one way only: it does not authenticate.
    return refused({ code: 'passphrase-wrong', path, value: owner, limit: 'mind capitals and the keyboard layout', clause: 'HOUSE keys' })
  }
}

function fromJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
