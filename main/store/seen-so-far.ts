import type { Kysely } from 'kysely'
import type { Entry, Identity } from '../../core/ledger/index.ts'
import { sealFigures } from './book.ts'
import { everMoved } from './inventory.ts'
import type { Known } from './known-before.ts'
import { booked, standing, ticketCount, versionOf } from './known.ts'
import { periodsOf } from './periods.ts'
import type { Schema } from './schema.ts'
import type { SealAt } from './sealed.ts'
import { isShared, movementsOf } from './stock.ts'
import type { Head } from './store.ts'
import { tankTimeSeen } from './tank-time-seen.ts'

/** What the entries so far have set, as the next one is judged by it. */
export interface SeenSoFar {
  known(head: Head): Known
  /** The last seal. */
  seal(): SealAt | undefined
  /** What of the tank time of the next entry is taken already, in sentences; asked of every entry in turn, before it is projected. */
  tankTaken(entry: Entry): Promise<readonly string[]>
  /** Takes in an entry after it was projected. */
  take(entry: Entry): void
}

/**
 * Nothing seen yet.
 * @param again where the projections are made again, entry by entry
 */
export function nothingSeen(again: Kysely<Schema>): SeenSoFar {
  const versions = new Map<number, ReturnType<typeof versionOf>>()
  const identities = new Map<string, Identity>()
  let periods: ReturnType<Known['periods']> = Promise.resolve([])
  let seal: SealAt | undefined
  const time = tankTimeSeen(async ({ tank, opened, closed }) => (await everMoved(again, tank, opened, closed)).underWay)
  return {
    known: (head) => ({
      head, ticketCount: () => ticketCount(again), standing: (number) => standing(again, number), booked: (seq) => booked(again, seq),
      legs: (seq) => movementsOf(again, seq), shared: (seq, tank, product) => isShared(again, seq, tank, product),
      version: (seq) => Promise.resolve(versions.get(seq)), identity: (id) => Promise.resolve(identities.get(id)), periods: () => periods, periodsFrom: () => periods,
      sealFigures: (period) => sealFigures(again, period, head.seq, seal),
    }),
    seal: () => seal,
    tankTaken: (entry) => time.take(entry),
    take: (entry) => {
      versions.set(entry.seq, versionOf(entry))
      if (entry.kind === 'identity-set') identities.set(entry.body.identity.id, entry.body.identity)
      if (entry.kind === 'period-closed') seal = { seq: entry.seq, seal: entry.body.seal }
      // kept from one entry to the next: they change with these two alone
      if (entry.kind === 'period-opened' || entry.kind === 'period-closed') periods = periodsOf(again)
    },
  }
}
