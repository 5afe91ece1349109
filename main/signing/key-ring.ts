import type { webcrypto } from 'node:crypto'
import type { Identity } from '../../core/ledger/index.ts'

/** Opens private keys with their passphrase and keeps them open while the program runs. */
export interface KeyRing {
  /**
   * @param protectedKey as the store keeps it
   * @throws Refused `passphrase-wrong`
   */
  open(identity: Identity, protectedKey: string, passphrase: string, path: string): Promise<webcrypto.CryptoKey>
}
