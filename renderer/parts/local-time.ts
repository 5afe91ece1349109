/** Times are kept in UTC and written in the terminal's own zone: `2026-03-14 06:10`. */

const WRITTEN = /^(\d{4})-(\d{2})-(\d{2})[ T](\d{2}):(\d{2})(?::(\d{2}))?\s*(Z|[+-]\d{2}:\d{2})?$/

export type ReadTime =
  | { readonly ok: true; readonly instant: string }
  | { readonly ok: false; readonly why: 'unreadable' | 'does-not-exist' | 'happens-twice' }

/** An instant as the clock on the terminal's wall shows it; text that is no instant is shown as it stands. */
export function localTime(instant: string, zone: string): string {
  const at = new Date(instant)
  if (Number.isNaN(at.getTime())) return instant
  const part = wallClock(at, zone)
  const seconds = part.second === '00' ? '' : `:${part.second}`
  return `${part.year}-${part.month}-${part.day} ${part.hour}:${part.minute}${seconds}`
}

/** A sentence of the other side with its UTC instants as the terminal's wall clock shows them. */
export function withLocalTimes(text: string, zone: string): string {
  return text.replace(/\d{4}-\d{2}-\d{2}T[\d:.]+Z/g, (instant) => localTime(instant.replace(/\.\d+Z$/, 'Z'), zone))
}

/**
 * The instant of a wall-clock time. In the hour that the clock shows twice in autumn an offset must be written behind
 * it (`2026-10-25 01:30 +01:00`); in the hour that spring leaves out there is no such time.
 */
export function readLocalTime(text: string, zone: string): ReadTime {
  const match = WRITTEN.exec(text.trim())
  if (!match) return { ok: false, why: 'unreadable' }
  const [, year = '', month = '', day = '', hour = '', minute = '', second = '00', offset] = match
  const wall = `${year}-${month}-${day}T${hour}:${minute}:${second}`
  const asIfUtc = new Date(`${wall}Z`)
  if (Number.isNaN(asIfUtc.getTime()) || !asIfUtc.toISOString().startsWith(wall)) return { ok: false, why: 'unreadable' }
  if (offset) {
    const given = new Date(`${wall}${offset}`)
    return Number.isNaN(given.getTime()) ? { ok: false, why: 'unreadable' } : { ok: true, instant: withoutMilliseconds(given) }
  }
  const candidates = offsetsAround(asIfUtc, zone)
    .map((minutes) => new Date(asIfUtc.getTime() - minutes * 60_000))
    .filter((instant) => offsetMinutes(instant, zone) * 60_000 + instant.getTime() === asIfUtc.getTime())
  const [first, second2] = candidates
  if (!first) return { ok: false, why: 'does-not-exist' }
  return second2 ? { ok: false, why: 'happens-twice' } : { ok: true, instant: withoutMilliseconds(first) }
}

/** The different offsets in force a day before and a day after. */
function offsetsAround(instant: Date, zone: string): readonly number[] {
  const day = 86_400_000
  return [...new Set([-day, day].map((shift) => offsetMinutes(new Date(instant.getTime() + shift), zone)))]
}

function offsetMinutes(instant: Date, zone: string): number {
  const part = wallClock(instant, zone)
  const wall = Date.UTC(Number(part.year), Number(part.month) - 1, Number(part.day), Number(part.hour), Number(part.minute), Number(part.second))
  return (wall - Math.floor(instant.getTime() / 1000) * 1000) / 60_000
}

type Part = 'year' | 'month' | 'day' | 'hour' | 'minute' | 'second'

function wallClock(at: Date, zone: string): Readonly<Record<Part, string>> {
  const format = new Intl.DateTimeFormat('en-GB', { timeZone: zone, hourCycle: 'h23', year: 'numeric', month: '2-digit', day: '2-digit', hour: '2-digit', minute: '2-digit', second: '2-digit' })
  const parts = format.formatToParts(at)
  const find = (type: Part): string => parts.find((part) => part.type === type)?.value ?? ''
  return { year: find('year').padStart(4, '0'), month: find('month'), day: find('day'), hour: find('hour'), minute: find('minute'), second: find('second') }
}

function withoutMilliseconds(instant: Date): string {
  return instant.toISOString().replace(/\.\d{3}Z$/, 'Z')
}
