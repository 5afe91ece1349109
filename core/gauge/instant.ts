import { accepted, refused, type Outcome } from '../refusal/index.ts'
import { inCalendar } from '../units/index.ts'

/** A UTC instant as it was written, and a text of fixed width that sorts in time. */
export interface Instant { readonly text: string; readonly order: string }

const FORM = /^(\d{4})-(\d{2})-(\d{2})T(\d{2}):(\d{2}):(\d{2})(?:\.(\d{1,9}))?Z$/

/**
 * Reads a UTC instant `2026-03-14T06:10:00Z`; the day must be in the calendar. Leap seconds are not accepted.
 * Refuses `unreadable-value`.
 * @source RFC-3339 5.6
 */
export function parseInstant(text: string, path: string): Outcome<Instant> {
  const match = FORM.exec(text)
  const part = (i: number): number => Number(match?.[i])
  if (!match || !inCalendar(part(1), part(2), part(3)) || part(4) > 23 || part(5) > 59 || part(6) > 59) {
    return refused({ code: 'unreadable-value', path, value: text, limit: 'a UTC instant as 2026-03-14T06:10:00Z', clause: 'RFC-3339 5.6' })
  }
  return accepted({ text, order: `${text.slice(0, 19)}.${(match[7] ?? '').padEnd(9, '0')}` })
}

/**
 * Minutes of an instant from a fixed one, for differences of time.
 * @param instant as {@link parseInstant} read it
 * @source RFC-3339 5.6
 */
export function minuteOf({ text }: Instant): number {
  return Date.parse(text) / 60_000
}
