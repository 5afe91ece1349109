import { versionInForce } from './effective-date.ts'
import type { EntryOf } from './entry.ts'
import { instantKey } from './instant.ts'

const DAY = 86_400_000

/** An instrument in service and until when its last verification holds. */
export interface InstrumentDue { readonly code: string; readonly due: string }

/**
 * Until when each instrument in service is verified: so many days after it was verified last, or after it was entered.
 *   due = last verification + verifyEveryDays
 * @param instruments their entries, in any order
 * @param verified when instruments were verified, by their codes
 * @param at UTC instant; later verifications and versions are left out
 * @source HOUSE periods
 */
export function instrumentsDue(instruments: readonly EntryOf<'instrument-set'>[], verified: readonly { readonly gauge: string; readonly at: string }[], at: string): readonly InstrumentDue[] {
  const codes = [...new Set(instruments.map(({ body }) => body.instrument.code))].toSorted()
  return codes.flatMap((code) => {
    const entry = versionInForce(instruments, code, at)
    const days = entry?.body.instrument.inService === true ? entry.body.instrument.verifyEveryDays : undefined
    if (entry === undefined || days === undefined) return []
    const last = verified.filter((one) => one.gauge === code && instantKey(one.at) <= instantKey(at)).map((one) => one.at).toSorted((a, b) => (instantKey(a) < instantKey(b) ? -1 : 1)).at(-1)
    return [{ code, due: later(last ?? entry.body.effectiveFrom, days) }]
  })
}

function later(at: string, days: number): string {
  return `${new Date(Date.parse(at) + days * DAY).toISOString().slice(0, 19)}Z`
}
