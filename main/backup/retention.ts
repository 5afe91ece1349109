import type { Keep, ListedBackup } from '../operations/contracts/index.ts'

/** A backup as the rule sees it. */
export interface Dated { readonly name: string; readonly at: string; readonly counts: boolean }
export type Reason = Exclude<ListedBackup['because'][number], 'not verified' | 'of another ledger'>

/** The grain of a rule: which backups belong together, of which the newest is kept. */
const GRAINS: readonly { readonly reason: 'day' | 'week' | 'month'; readonly many: (keep: Keep) => number; readonly of: (at: string) => string }[] = [
  { reason: 'day', many: (keep) => keep.days, of: (at) => at.slice(0, 10) },
  { reason: 'week', many: (keep) => keep.weeks, of: mondayOf },
  { reason: 'month', many: (keep) => keep.months, of: (at) => at.slice(0, 7) },
]

/**
 * Why each backup is kept; one that counts and has no reason is retired. Days, weeks (from Monday) and months are those
 * of UTC that have a backup at all, so that a pause retires nothing. The newest that counts is always kept.
 * @param backups those of one ledger; one that does not count (it was not verified) is neither kept for the rule nor judged by it
 */
export function reasonsToKeep(backups: readonly Dated[], keep: Keep): ReadonlyMap<string, readonly Reason[]> {
  const newestFirst = backups.filter((one) => one.counts).toSorted((a, b) => (a.at === b.at ? (a.name < b.name ? 1 : -1) : a.at < b.at ? 1 : -1))
  const reasons = new Map<string, Reason[]>(newestFirst.map((one) => [one.name, []]))
  const because = (one: Dated, reason: Reason): void => { reasons.get(one.name)?.push(reason) }
  newestFirst.slice(0, 1).forEach((one) => because(one, 'newest'))
  newestFirst.slice(0, keep.last).forEach((one) => because(one, 'last'))
  for (const { reason, many, of } of GRAINS) {
    const newestOf = new Map<string, Dated>()
    for (const one of newestFirst) if (!newestOf.has(of(one.at))) newestOf.set(of(one.at), one)
    ;[...newestOf.values()].slice(0, many(keep)).forEach((one) => because(one, reason))
  }
  return reasons
}

function mondayOf(at: string): string {
  const day = new Date(`${at.slice(0, 10)}T00:00:00Z`)
  day.setUTCDate(day.getUTCDate() - (day.getUTCDay() + 6) % 7)
  return day.toISOString().slice(0, 10)
}
