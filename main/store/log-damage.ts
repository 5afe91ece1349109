import { closeSync, existsSync, openSync, readFileSync, readSync, realpathSync } from 'node:fs'
import { LedgerFileFault } from './file-fault.ts'

/** The write-ahead log of SQLite. @see https://sqlite.org/fileformat.html 4 */
const HEADER = 32
const FRAME_HEADER = 24
const LITTLE_ENDIAN_SUMS = 0x377f0682
const BIG_ENDIAN_SUMS = 0x377f0683
const TRIES = 3

/**
 * Refuses a ledger whose log holds transactions behind a place that cannot be read. SQLite takes a log up to the first
 * frame whose sum is wrong, which is right for what was being written when the power went, and silently leaves out
 * everything after it. But a transaction begins only when the one before is on disk: whole transactions behind the bad
 * frame were acknowledged, and must not be lost without a word.
 */
export function refuseDamagedLog(path: string): void {
  const log = `${realpathSync(path)}-wal`
  for (let again = 1; existsSync(log); again += 1) {
    const bytes = readFileSync(log)
    const lost = lostBehindDamage(bytes)
    if (lost === undefined) return
    // another program may have begun the log anew while it was read
    if (again < TRIES || !headerOf(log).equals(bytes.subarray(0, HEADER))) continue
    throw new LedgerFileFault(path, `The ledger ${path} is damaged: ${lost} in ${log} cannot be read. Do not go on with it: keep both files aside as they are, and open the last backup.`)
  }
}

/** What a log holds that its readers would leave out although it was on disk; undefined when they read all of it. */
export function lostBehindDamage(bytes: Buffer): string | undefined {
  if (bytes.length <= HEADER || bytes.subarray(0, HEADER).every((byte) => byte === 0)) return undefined
  const magic = bytes.readUInt32BE(0)
  const little = magic === LITTLE_ENDIAN_SUMS
  const sums = sumsOf(bytes, 0, HEADER - 8, little, [0, 0])
  if ((!little && magic !== BIG_ENDIAN_SUMS) || !sumsStand(bytes, HEADER - 8, sums)) return 'the beginning of the log, and so all'
  const frame = FRAME_HEADER + pageSize(bytes)
  const frames = Math.floor((bytes.length - HEADER) / frame)
  const at = (i: number): number => HEADER + i * frame
  // frames of an older log have another pair of salts; one of two that is the same is ours, with a damaged other
  const ours = (i: number): boolean => bytes.compare(bytes, 16, 20, at(i) + 8, at(i) + 12) === 0 || bytes.compare(bytes, 20, 24, at(i) + 12, at(i) + 16) === 0
  let i = 0
  let before = sums
  for (; i < frames && ours(i); i += 1) {
    const own = sumsOf(bytes, at(i) + FRAME_HEADER, frame - FRAME_HEADER, little, sumsOf(bytes, at(i), 8, little, before))
    if (!sumsStand(bytes, at(i) + 16, own) || bytes.compare(bytes, 16, 24, at(i) + 8, at(i) + 16) !== 0) break
    before = own
  }
  let [commits, behind] = [0, 0]
  for (; i < frames; i += 1) if (ours(i)) {
    if (commits > 0) behind += 1
    if (bytes.readUInt32BE(at(i) + 4) !== 0) commits += 1
  }
  return behind > 0 ? `${commits} of the last postings` : undefined
}

function pageSize(bytes: Buffer): number {
  const size = bytes.readUInt32BE(8)
  return size === 1 ? 65_536 : size
}

type Sums = readonly [number, number]

/** The running sums over words of four bytes. */
function sumsOf(bytes: Buffer, from: number, length: number, little: boolean, [first, second]: Sums): Sums {
  const words = new DataView(bytes.buffer, bytes.byteOffset + from, length)
  for (let i = 0; i + 8 <= length; i += 8) {
    first = (first + words.getUint32(i, little) + second) >>> 0
    second = (second + words.getUint32(i + 4, little) + first) >>> 0
  }
  return [first, second]
}

function sumsStand(bytes: Buffer, at: number, [first, second]: Sums): boolean {
  return bytes.readUInt32BE(at) === first && bytes.readUInt32BE(at + 4) === second
}

function headerOf(log: string): Buffer {
  const header = Buffer.alloc(HEADER)
  const file = openSync(log, 'r')
  try { readSync(file, header, 0, HEADER, 0) } finally { closeSync(file) }
  return header
}
