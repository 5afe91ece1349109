/** Digits as they were booked, with a true minus sign. */
export function signed(value: string): string {
  return value.startsWith('-') ? `−${value.slice(1)}` : value
}

/**
 * An instant as the ticket states it, with the terminal's own time beside it where the zone is known here:
 * `2026-03-14 06:10:00 UTC (07:10 Europe/Madrid)`.
 */
export function printedInstant(at: string, zone?: string): string {
  const utc = `${at.replace('T', ' ').replace(/Z$/, '')} UTC`
  const local = zone === undefined ? undefined : localTime(at, zone)
  return local === undefined ? utc : `${utc} (${local} ${zone})`
}

function localTime(at: string, zone: string): string | undefined {
  try {
    const parts = new Intl.DateTimeFormat('en-GB', { timeZone: zone, year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }).formatToParts(new Date(at))
    const part = (type: Intl.DateTimeFormatPartTypes): string => parts.find((one) => one.type === type)?.value ?? ''
    const day = `${part('year')}-${part('month')}-${part('day')}`
    return `${at.startsWith(day) ? '' : `${day} `}${part('hour')}:${part('minute')}`
  } catch {
    // A zone that this system does not know: UTC alone says everything.
    return undefined
  }
}

/** A long hash in groups, so that it can be read aloud and compared. */
export function grouped(hash: string): string {
  return hash.match(/.{1,8}/g)?.join(' ') ?? hash
}
