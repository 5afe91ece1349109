import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, concatBytes, hexToBytes, utf8ToBytes } from '@noble/hashes/utils.js'
import { canonicalJson } from './canonical-json.ts'
import type { Entry, Posting } from './entry.ts'
import { entryText, type WrittenEntry } from './entry-text.ts'

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

/** SHA-256 of the 32 bytes of a hash followed by a text in UTF-8, as 64 lower-case hexadecimal digits. */
export type LinkHash = (previous: string, text: string) => string

/** The hash of an entry as it is written down: that of its {@link entryText} after the hash of the entry before. */
export type EntryHash = (entry: WrittenEntry) => string

/**
 * The hash that links entries: SHA-256( previous ‖ text ), `previous` as its 32 bytes, the text as UTF-8.
 * @source FIPS-180-4 6.2
 */
export const linkHash: LinkHash = (previous, text) => bytesToHex(sha256(concatBytes(hexToBytes(previous), utf8ToBytes(text))))

/** A posting with its body and origin as canonical JSON: all of it that needs no place in the chain. */
export interface WrittenPosting {
  readonly posting: Posting
  readonly body: string
  readonly origin: string | undefined
}

/** Writes down what is posted. */
export function writePosting(posting: Posting): WrittenPosting {
  return { posting, body: canonicalJson(posting.body), origin: posting.origin === undefined ? undefined : canonicalJson(posting.origin) }
}

/** An entry as it is written down: what its hash is made of. */
export function writeEntry(posting: Posting, place: Place): WrittenEntry {
  return placed(writePosting(posting), place)
}

function placed({ posting: { kind, at, by }, body, origin }: WrittenPosting, { seq, previous }: Place): WrittenEntry {
  return { seq, kind, at, by, body, ...origin === undefined ? {} : { origin }, previous }
}

/**
 * Places a posting in the chain: its hash is that of {@link entryText} after the hash of the entry before.
 * @param posting what is posted
 * @param place its number, and the hash of the entry before
 * @source FIPS-180-4 6.2
 * @source RFC-8785 3.2
 */
export function chainEntry(posting: Posting, place: Place): Entry {
  return placeEntry(writePosting(posting), place, (entry) => linkHash(entry.previous, entryText(entry))).entry
}

/** An entry placed in the chain as {@link chainEntry} does, and the same as it is written down. */
export function placeEntry(posting: WrittenPosting, place: Place, hashOf: EntryHash): { readonly entry: Entry; readonly written: WrittenEntry } {
  const written = placed(posting, place)
  return { entry: { ...posting.posting, seq: place.seq, previous: place.previous, hash: hashOf(written) }, written }
}

/**
 * What of an entry does not fit the entry before it; empty when the link holds.
 * @param entry an entry as it was read
 * @param before the entry that was read before it; absent for the first
 * @source FIPS-180-4 6.2
 */
export function checkLink(entry: Entry, before: Pick<Entry, 'seq' | 'hash'> | undefined): readonly LinkDifference[] {
  return checkWrittenLink({ ...writeEntry(entry, entry), hash: entry.hash }, before ?? { seq: 0, hash: GENESIS }, linkHash)
}

/**
 * What of an entry as it is written down does not fit the entry before it; empty when the link holds. That body and
 * origin are canonical is not looked at: it is their text, as it stands, that was hashed.
 * @param entry the entry and the hash that stands with it
 * @param before the entry before it; number 0 and {@link GENESIS} before the first
 * @param hashOf how SHA-256 is worked here, {@link linkHash} or one that gives the same faster
 * @source FIPS-180-4 6.2
 */
export function checkWrittenLink(entry: WrittenEntry & Pick<Entry, 'hash'>, before: Pick<Entry, 'seq' | 'hash'>, hashOf: LinkHash): readonly LinkDifference[] {
  const expected = isHash(entry.previous) ? hashOf(entry.previous, entryText(entry)) : 'a hash over 64 hexadecimal digits'
  if (entry.hash === expected && entry.previous === before.hash && entry.seq === before.seq + 1) return []
  const differences: LinkDifference[] = [
    { seq: entry.seq, part: 'seq', stands: String(entry.seq), expected: String(before.seq + 1) },
    { seq: entry.seq, part: 'previous', stands: entry.previous, expected: before.hash },
    { seq: entry.seq, part: 'hash', stands: entry.hash, expected },
  ]
  return differences.filter((difference) => difference.stands !== difference.expected)
}

function isHash(text: string): boolean {
  return /^[0-9a-f]{64}$/.test(text)
}
