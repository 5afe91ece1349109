import { accepted, refused, type Outcome } from '../../core/refusal/index.ts'
import { inCalendar } from '../../core/units/index.ts'

const FORM = /^(\d{4})-(\d{2})-(\d{2})[ T](\d{2}):(\d{2})$/
const HOUR = 3_600_000
const QUARTER = 900_000

/**
 * A time as the clock on the wall of the terminal showed it, as a UTC instant. A time that the clock skipped, or showed
 * twice, when it was put forward or back is refused: nobody can tell which instant is meant.
 * @param text `2026-09-01 06:12`
 * @param zone IANA zone of the terminal
 * @param path where it stood
 */
export function instantOfLocal(text: string, zone: string, path: string): Outcome<string> {
  const finding = (limit: string): Outcome<never> => refused({ code: 'unreadable-value', path, value: text, limit, clause: 'HOUSE samples' })
  const parts = FORM.exec(text)?.slice(1).map(Number)
  const [year = 0, month = 0, day = 0, hour = 99, minute = 99] = parts ?? []
  if (!inCalendar(year, month, day) || hour > 23 || minute > 59) return finding(`a local time as 2026-09-01 06:12, in ${zone}`)
  const naive = Date.UTC(year, month - 1, day, hour, minute)
  const [only, ...others] = showing(naive, zone)
  if (only === undefined) return finding(`a time that the clock showed in ${zone}; it was put forward over this one`)
  if (others.length > 0) return finding(`a time that the clock showed once in ${zone}; it was put back over this one`)
  return accepted(asText(only))
}

/**
 * The instant at which the clock of a zone first showed a time; of a time that it skipped, the next that it showed.
 * @param naive the time as if it were UTC [ms]
 */
export function firstShowing(naive: number, zone: string): string {
  for (let later = 0; later < 24 * 4; later += 1) {
    const [first] = showing(naive + later * QUARTER, zone).toSorted((a, b) => a - b)
    if (first !== undefined) return asText(first)
  }
  throw new Error(`The clock of ${zone} skipped a whole day.`)
}

/** What the calendar on the wall of a zone showed at an instant [ms]. */
export function clockAt(instant: number, zone: string): { readonly year: number; readonly month: number } {
  const shown = new Date(instant + offsetAt(instant, zone))
  return { year: shown.getUTCFullYear(), month: shown.getUTCMonth() + 1 }
}

/** The instants that show a time: every offset that the zone had within a day on either side is tried. */
function showing(naive: number, zone: string): readonly number[] {
  const offsets = new Set([-24, 0, 24].map((hours) => offsetAt(naive + hours * HOUR, zone)))
  return [...offsets].map((offset) => naive - offset).filter((instant) => instant + offsetAt(instant, zone) === naive)
}

function asText(instant: number): string {
  return `${new Date(instant).toISOString().slice(0, 19)}Z`
}

/** How far the zone's clock was ahead of UTC at an instant [ms]. */
function offsetAt(instant: number, zone: string): number {
  const parts = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone, year: 'numeric', month: 'numeric', day: 'numeric', hour: 'numeric', minute: 'numeric', second: 'numeric', hourCycle: 'h23',
  }).formatToParts(new Date(instant))
  const part = (type: Intl.DateTimeFormatPartTypes): number => Number(parts.find((one) => one.type === type)?.value)
  return Date.UTC(part('year'), part('month') - 1, part('day'), part('hour'), part('minute'), part('second')) - instant
}
