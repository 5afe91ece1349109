import type { Entry, EntryKind } from '../../core/ledger/index.ts'
import type { LedgerStore } from '../store/index.ts'

type Reads = Pick<LedgerStore, 'trail' | 'entry' | 'movements'>

const BOOKS: readonly EntryKind[] = ['ticket-posted', 'stock-moved', 'adjustment-posted']
const BEFORE_ALL = '0001-01-01T00:00:00Z'
const MONTH = 31 * 86_400_000

/**
 * When the first movement that stands counts, in a ledger without periods; undefined where there is none. What was entered
 * first need not be the earliest, and may be void: what is earlier is looked for before it, and then after it in growing spans.
 */
export async function firstMovement(store: Reads, now: string): Promise<string | undefined> {
  const entered = await firstEntered(store)
  if (entered === undefined) return undefined
  let [from, to] = [BEFORE_ALL, countsAt(entered)]
  for (let span = MONTH; ; span *= 2) {
    const [first] = await store.movements(from, to)
    if (first !== undefined || Date.parse(to) > Date.parse(now)) return first?.bookedAt
    from = to
    to = new Date(Date.parse(from) + span).toISOString()
  }
}

/** The first entry that books, found by halves: the trail is asked from its end. */
async function firstEntered(store: Reads): Promise<Entry | undefined> {
  const lastUpTo = async (seq?: number): Promise<number | undefined> => (await store.trail({ kinds: BOOKS }, 1, seq === undefined ? undefined : seq + 1)).entries[0]?.seq
  let low = 1
  let high = await lastUpTo()
  while (high !== undefined && low < high) {
    const middle = Math.floor((low + high) / 2)
    const found = await lastUpTo(middle)
    if (found === undefined) low = middle + 1
    else high = found
  }
  return high === undefined ? undefined : store.entry(high)
}

function countsAt(entry: Entry): string {
  switch (entry.kind) {
    case 'ticket-posted': return entry.body.ticket.closing.at
    case 'stock-moved': return entry.body.movement.at
    case 'adjustment-posted': return entry.body.effectiveAt
    default: return entry.at
  }
}
