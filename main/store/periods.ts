import { sql, type Kysely } from 'kysely'
import { instantKey, type EntryOf, type PeriodStanding } from '../../core/ledger/index.ts'
import { entryAt } from './entry-rows.ts'
import { fixedQuery } from './fixed-query.ts'
import type { PeriodTable, Schema } from './schema.ts'
import type { SealAt } from './sealed.ts'

type Row = Pick<PeriodTable, 'seq' | 'name' | 'from_at' | 'to_at' | 'closed_seq'>

const inOrder = fixedQuery((db) => db.selectFrom('period').select(['seq', 'name', 'from_at', 'to_at', 'closed_seq']).orderBy('to_order'))

/** Every period that was opened, in order of time; they are few. */
export async function periodsOf(db: Kysely<Schema>): Promise<readonly PeriodStanding[]> {
  return (await inOrder(db)).map(standing)
}

const fromThere = fixedQuery((db, order: string) => ({
  compile: () => sql<Row>`select seq, name, from_at, to_at, closed_seq from period where to_order >= ${order} or closed_seq is null
    or to_order = (select min(to_order) from period) or to_order = (select max(to_order) from period) order by to_order`.compile(db),
}))

/**
 * The periods that the rules of `core/ledger/period-rules.ts` look at for something from an instant on, the same as they
 * find among all: those that end there or later, that are open, the first and the last. Ten years of closed months are not.
 */
export async function periodsFrom(db: Kysely<Schema>, at: string): Promise<readonly PeriodStanding[]> {
  return (await fromThere(db, instantKey(at))).map(standing)
}

function standing({ seq, name, from_at: from, to_at: to, closed_seq: closedBy }: Row): PeriodStanding {
  return { seq, name, from, to, closedBy }
}

/** The entry that closed a period, with its seal. */
export async function closingEntry(db: Kysely<Schema>, { closedBy }: Pick<PeriodStanding, 'closedBy'>): Promise<EntryOf<'period-closed'> | undefined> {
  const entry = closedBy === null ? undefined : await entryAt(db, closedBy)
  return entry?.kind === 'period-closed' ? entry : undefined
}

/** The seal of the period before another one. */
export async function sealBefore(db: Kysely<Schema>, { name }: Pick<PeriodStanding, 'name'>): Promise<SealAt | undefined> {
  const periods = await periodsOf(db)
  return sealOf(db, periods[periods.findIndex((period) => period.name === name) - 1])
}

/** The last seal whose period ends at or before an instant. */
export async function lastSeal(db: Kysely<Schema>, at: string): Promise<SealAt | undefined> {
  const moment = instantKey(at)
  return sealOf(db, (await periodsOf(db)).findLast(({ to, closedBy }) => closedBy !== null && instantKey(to) <= moment))
}

async function sealOf(db: Kysely<Schema>, period: PeriodStanding | undefined): Promise<SealAt | undefined> {
  const entry = period && await closingEntry(db, period)
  return entry && { seq: entry.seq, seal: entry.body.seal }
}
