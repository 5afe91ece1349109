import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, concatBytes, hexToBytes, utf8ToBytes } from '@noble/hashes/utils.js'
import { canonicalJson } from './canonical-json.ts'
import type { Entry, Posting } from './entry.ts'

/** What stands before the first entry. */
export const GENESIS = '0'.repeat(64)

/** Where an entry comes in the chain. */
export interface Place {
  /** From 1, without gaps. */
  readonly seq: number
  /** Hash of the entry before, or {@link GENESIS}. */
  readonly previous: string
}

/** Something in an entry that does not fit the chain. */
export interface LinkDifference {
  readonly seq: number
  readonly part: 'seq' | 'previous' | 'hash'
  readonly stands: string
  readonly expected: string
}

/**
 * Hash of an entry: SHA-256( previous ‖ canonical JSON of the entry without `hash` ), `previous` as its 32 bytes, the
 * JSON as UTF-8.
 * @source FIPS-180-4 6.2
 * @source RFC-8785 3.2
 */
function entryHash(entry: Posting & Place): string {
  const { seq, kind, at, by, body, previous } = entry
  const text = canonicalJson({ seq, kind, at, by, body, previous })
  return bytesToHex(sha256(concatBytes(hexToBytes(previous), utf8ToBytes(text))))
}

/**
 * Places a posting in the chain.
 * @param posting what is posted
 * @param place its number, and the hash of the entry before
 * @source FIPS-180-4 6.2
 */
export function chainEntry(posting: Posting, place: Place): Entry {
  const placed = { ...posting, seq: place.seq, previous: place.previous }
  return { ...placed, hash: entryHash(placed) }
}

/**
 * What of an entry does not fit the entry before it; empty when the link holds.
 * @param entry an entry as it was read
 * @param before the entry that was read before it; absent for the first
 * @source FIPS-180-4 6.2
 */
export function checkLink(entry: Entry, before: Pick<Entry, 'seq' | 'hash'> | undefined): readonly LinkDifference[] {
  const differences: LinkDifference[] = []
  const compare = (part: LinkDifference['part'], stands: string, expected: string): void => {
    if (stands !== expected) differences.push({ seq: entry.seq, part, stands, expected })
  }
  compare('seq', String(entry.seq), String((before?.seq ?? 0) + 1))
  compare('previous', entry.previous, before?.hash ?? GENESIS)
  compare('hash', entry.hash, /^[0-9a-f]{64}$/.test(entry.previous) ? entryHash(entry) : 'a hash over 64 hexadecimal digits')
  return differences
}
