import { scrypt } from 'node:crypto'

/** scrypt cost of what is written now: 128 MB and about half a second for every guess. */
export const PASSPHRASE_COST = 2 ** 17

/** 32 bytes from a passphrase. @param cost scrypt N, a power of two. @source RFC-7914 6 */
export function derived(passphrase: string, salt: Buffer, cost: number): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    scrypt(passphrase.normalize('NFKC'), salt, 32, { N: cost, r: 8, p: 1, maxmem: 2 * 128 * 8 * cost }, (error, key) => (error ? reject(error) : resolve(key)))
  })
}
