import { readLocalTime } from './local-time.ts'

/** The first instant of a day on the terminal's clock; where the clock leaves midnight out, the hour after it. */
export function beginOfDay(day: string, zone: string): string | undefined {
  const midnight = readLocalTime(`${day.trim()} 00:00`, zone)
  if (midnight.ok) return midnight.instant
  if (midnight.why === 'unreadable') return undefined
  const offsets = midnight.why === 'does-not-exist' ? readLocalTime(`${day.trim()} 01:00`, zone) : readLocalTime(`${dayAfter(day, -1)} 23:59`, zone)
  return offsets.ok ? offsets.instant : undefined
}

/** The day so many days after one; text that is no day stays as it is. */
export function dayAfter(day: string, days = 1): string {
  const at = /^\d{4}-\d{2}-\d{2}$/.test(day.trim()) ? Date.parse(`${day.trim()}T00:00:00Z`) : Number.NaN
  return Number.isNaN(at) ? day : new Date(at + days * 86_400_000).toISOString().slice(0, 10)
}
