import type { StandingVerification } from '../../core/gauge/index.ts'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'

/** The last verification of every automatic gauge of a tank, in words; what was never verified cannot be named. */
export function verifiedGauges(all: readonly StandingVerification[], tank: string, zone: string): string {
  const t = words.gauge.verify
  const last = new Map(all.filter((one) => one.tank === tank).toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.seq - b.seq)).map((one) => [one.gauge, one]))
  if (last.size === 0) return t.never
  return [...last.values()].map(({ gauge, at, use, verdict, greatest, nextDue }) =>
    t.standing(gauge, localTime(at, zone), t.uses[use], verdict, greatest, nextDue === null ? null : localTime(nextDue, zone))).join('; ')
}
