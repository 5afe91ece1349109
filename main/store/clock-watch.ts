import { parseInstant } from '../../core/gauge/index.ts'
import type { Entry } from '../../core/ledger/index.ts'
import type { Difference } from './store.ts'

/** More than these are not listed. */
const LISTED = 100

/**
 * Notices entries whose instant is before that of the entry that they follow: a clock was set back, or two desks differ.
 * Such an entry is posted all the same, with its instant as the clock gave it; what decides the order is its number.
 */
export function clockWatch(): { sees(entry: Pick<Entry, 'seq' | 'at'>): void; readonly noticed: readonly Difference[] } {
  const noticed: Difference[] = []
  let last: { readonly seq: number; readonly at: string; readonly order: string } | undefined
  return {
    noticed,
    sees({ seq, at }) {
      const read = parseInstant(at, 'at')
      if (!read.ok) return
      const { order } = read.value
      if (last !== undefined && order < last.order && noticed.length < LISTED) {
        noticed.push({ where: `entry ${seq}`, what: `it is dated ${at}, before entry ${last.seq} of ${last.at}, which it follows: a clock was set back, or those of two desks differ` })
      }
      last = { seq, at, order }
    },
  }
}
