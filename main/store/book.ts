import type { Kysely } from 'kysely'
import { bookAfter, instantKey, NOTHING_SEALED, STOCK_MOVEMENTS, type Period, type Seal } from '../../core/ledger/index.ts'
import type { Schema } from './schema.ts'
import type { BookAt, SealAt, SealFigures } from './sealed.ts'

/**
 * The book at an instant: the last seal before it and the changes since, so that the cost follows what lies between.
 * @param at UTC instant
 * @param since the seal to go on from; its period ends at or before the instant
 */
export async function bookAt(db: Kysely<Schema>, at: string, since: SealAt | undefined): Promise<BookAt> {
  const after = since === undefined ? '' : instantKey(since.seal.period.to)
  const places = await db.selectFrom('movement').select(['tank as code', 'product', 'change as nsv', 'unit'])
    .where('voided_seq', 'is', null).where('booked_order', '>', after).where('booked_order', '<=', instantKey(at)).execute()
  const parties = await db.selectFrom('allocation').select(['tank as code', 'product', 'party', 'nsv', 'unit'])
    .where('at_order', '>', after).where('at_order', '<=', instantKey(at))
    .where(({ not, exists, selectFrom }) => not(exists(selectFrom('movement').select('movement.seq').whereRef('movement.seq', '=', 'allocation.of_seq').where('movement.voided_seq', 'is not', null))))
    .execute()
  return { ...bookAfter(since?.seal ?? NOTHING_SEALED, places, parties), since: since ?? null, changes: places.length + parties.length }
}

/**
 * What a seal counts in its period: what is booked in it, whenever it was gauged.
 * @param entries entries since the seal before
 */
export async function countsOf(db: Kysely<Schema>, { from, to }: Period, entries: number): Promise<Seal['counts']> {
  const [after, upTo] = [instantKey(from), instantKey(to)]
  const kinds = await db.selectFrom('movement')
    .select(({ fn, eb }) => [
      'kind', fn.count<number>('seq').distinct().as('all'),
      fn.count<number>(eb.case().when('voided_seq', 'is not', null).then(eb.ref('seq')).end()).distinct().as('voided'),
      fn.count<number>(eb.case().when('concerns', 'is not', null).then(eb.ref('seq')).end()).distinct().as('late'),
    ])
    .where('booked_order', '>', after).where('booked_order', '<=', upTo).groupBy('kind').execute()
  const { inventories } = await db.selectFrom('measurement').select(({ fn }) => fn.countAll<number>().as('inventories'))
    .where('at_order', '>', after).where('at_order', '<=', upTo).executeTakeFirstOrThrow()
  const sum = (count: 'all' | 'voided' | 'late', of: readonly string[] = kinds.map(({ kind }) => kind)): number =>
    kinds.filter(({ kind }) => of.includes(kind)).reduce((total, row) => total + Number(row[count]), 0)
  return {
    entries, tickets: sum('all', ['receipt', 'delivery']), voided: sum('voided'), inventories: Number(inventories),
    adjustments: sum('all', ['adjustment']), stockMovements: sum('all', STOCK_MOVEMENTS), lateCorrections: sum('late'),
  }
}

/**
 * What the seal of a period must say.
 * @param period that is to be closed, or was
 * @param head number of the last entry before the closing one
 * @param since the seal before; undefined for the first
 */
export async function sealFigures(db: Kysely<Schema>, period: Period, head: number, since: SealAt | undefined): Promise<SealFigures> {
  const { balances, owners } = await bookAt(db, period.to, since)
  return { counts: await countsOf(db, period, head - (since?.seq ?? 0)), balances, owners }
}
