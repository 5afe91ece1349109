import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { canonicalJson } from './canonical-json.ts'

/**
 * SHA-256 as 64 lower-case hexadecimal digits.
 * @param content bytes, or a text that is taken as UTF-8
 * @source FIPS-180-4 6.2
 */
export function sha256Hex(content: Uint8Array | string): string {
  return bytesToHex(sha256(typeof content === 'string' ? utf8ToBytes(content) : content))
}

/**
 * Hash by which a version of a tank or product is named: SHA-256 of its canonical JSON.
 * @param value plain JSON data
 * @source FIPS-180-4 6.2
 * @source RFC-8785 3.2
 */
export function versionHash(value: unknown): string {
  return sha256Hex(canonicalJson(value))
}
