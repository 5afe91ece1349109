const INSTANT = /^(\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2})(?:\.(\d{1,9}))?Z$/

/**
 * A text by which UTC instants sort in time, whatever number of decimals their seconds have.
 * Throws on anything but an RFC 3339 instant in UTC: an entry that cannot be placed in time may not be kept.
 * @param at `2026-03-14T06:10:00Z`
 * @source RFC-3339 5.1
 */
export function instantKey(at: string): string {
  const [, seconds, decimals = ''] = INSTANT.exec(at) ?? []
  if (seconds === undefined) throw new Error(`“${at}” is not an RFC 3339 instant in UTC`)
  const digits = decimals.replace(/0+$/, '')
  return digits === '' ? seconds : `${seconds}.${digits}`
}
