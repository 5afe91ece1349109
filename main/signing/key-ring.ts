import { createHmac, randomBytes, timingSafeEqual, type webcrypto } from 'node:crypto'
import type { Identity } from '../../core/ledger/index.ts'
import { orRefuse } from '../../core/refusal/index.ts'
import { signingKey } from './certificate.ts'
import { openKey } from './vault.ts'

/** Opens private keys with their passphrase and keeps them open while the program runs. */
export interface KeyRing {
  /**
   * @param protectedKey as the store keeps it
   * @throws Refused `passphrase-wrong`
   */
  open(identity: Identity, protectedKey: string, passphrase: string, path: string): Promise<webcrypto.CryptoKey>
}

interface OpenedKey { readonly proof: Buffer; readonly key: webcrypto.CryptoKey }

/**
 * A ring without keys. A second opening with the same passphrase is quick: a digest of it under a key of this process
 * is kept, never the passphrase. A wrong one always pays the full cost of the vault, so that the ring helps no guesser.
 */
export function makeKeyRing(): KeyRing {
  const secret = randomBytes(32)
  const opened = new Map<string, OpenedKey>()
  return {
    async open(identity, protectedKey, passphrase, path) {
      const proof = createHmac('sha256', secret).update(JSON.stringify([identity.id, identity.fingerprint, protectedKey, passphrase.normalize('NFKC')])).digest()
      const known = opened.get(identity.id)
      if (known && timingSafeEqual(known.proof, proof)) return known.key
      const bytes = orRefuse(await openKey(protectedKey, identity.id, passphrase, path))
      const key = await signingKey(bytes, identity)
      opened.set(identity.id, { proof, key })
      return key
    },
  }
}
