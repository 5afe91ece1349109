import { hash } from 'node:crypto'
import { placeText, type LinkHash, type WrittenEntry } from '../../core/ledger/index.ts'

const PREVIOUS = 32
/** A character takes at most three bytes for each of its units. */
const BYTES_PER_UNIT = 3
let bytes = Buffer.allocUnsafe(64 * 1024)

/** The hash that links entries, worked by Node's own SHA-256; the same as `linkHash` of the core, several times faster. */
export const quickLinkHash: LinkHash = (previous, text) => {
  makeRoom(PREVIOUS + BYTES_PER_UNIT * text.length)
  bytes.write(previous, 0, PREVIOUS, 'hex')
  return hash('sha256', bytes.subarray(0, PREVIOUS + bytes.write(text, PREVIOUS, 'utf8')), 'hex')
}

/** The same for an entry whose text is in UTF-8 already, up to its place in the chain. */
export function entryHash(place: Pick<WrittenEntry, 'previous' | 'seq'>, before: Uint8Array): string {
  const after = placeText(place)
  makeRoom(PREVIOUS + before.length + BYTES_PER_UNIT * after.length)
  bytes.write(place.previous, 0, PREVIOUS, 'hex')
  bytes.set(before, PREVIOUS)
  const end = PREVIOUS + before.length
  return hash('sha256', bytes.subarray(0, end + bytes.write(after, end, 'utf8')), 'hex')
}

function makeRoom(most: number): void {
  if (bytes.length < most) bytes = Buffer.allocUnsafe(2 * most)
}

/** SHA-256 of bytes as 64 lower-case hexadecimal digits, worked by Node. */
export function quickSha256(content: Uint8Array): string {
  return hash('sha256', content, 'hex')
}
