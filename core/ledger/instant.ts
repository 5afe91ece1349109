import { parseInstant } from '../gauge/index.ts'

/**
 * A text by which UTC instants sort in time, whatever number of decimals their seconds have.
 * Throws on anything but an instant in UTC: an entry that cannot be placed in time may not be kept.
 * @param at `2026-03-14T06:10:00Z`
 * @source RFC-3339 5.1
 */
export function instantKey(at: string): string {
  const read = parseInstant(at, 'at')
  if (!read.ok) throw new Error(`“${at}” is not an RFC 3339 instant in UTC`)
  return read.value.order
}
