import { bookedFirst, refuseStockVoid, type EntryOf, type Late, type StockStanding } from '../../../core/ledger/index.ts'
import { orRefuse, Refused } from '../../../core/refusal/index.ts'
import type { LedgerStore } from '../../store/index.ts'
import { atHead } from '../at-head.ts'
import { bookable, type LateWish } from '../bookable.ts'
import type { Handler, LedgerContext } from '../context.ts'
import { readRecord, tankInForce } from '../on-record.ts'
import { post } from '../post.ts'
import { enteredBy } from '../who.ts'

/**
 * A regrade is voided although the tank's version that came with it stands: most are voided to be entered anew with
 * another gauge, and then the tank does bear the new name. Only people know whether it does, so that the answer says so.
 */
export const voidStockMovement: Handler<'void-stock-movement'> = async ({ seq, reason, by, late: wish }, context, { signal }) =>
  atHead(context.store, signal, async (head) => {
    const { store, now } = context
    const entry = await store.entry(seq)
    const movement = entry?.kind === 'stock-moved' ? entry : undefined
    const findings = refuseStockVoid(movement && await standingOf(movement, store), { seq, reason })
    if (movement === undefined || findings.length > 0) throw new Refused(findings)
    const late = await voidable(seq, wish, context)
    const posted = await post(store, { kind: 'stock-voided', at: now(), by: enteredBy(context, by), body: { seq, reason, ...late === undefined ? {} : { late } } }, { expectedHead: head.hash })
    return { ...posted, tankStands: await tankThatStands(movement, late, store) }
  })

async function standingOf({ seq }: EntryOf<'stock-moved'>, store: LedgerStore): Promise<StockStanding> {
  const voided = (await store.stockVoids([seq])).get(seq)
  return { seq, voided: voided === undefined ? null : { seq: voided.seq, reason: voided.body.reason } }
}

/** A void counts where the movement counts; as soon as one leg counts in a closed period, all of it is taken back late. */
async function voidable(seq: number, wish: LateWish | undefined, context: LedgerContext): Promise<Late | undefined> {
  const first = bookedFirst(await context.store.movementsOf(seq))
  if (first === undefined) throw new Error(`Entry ${seq} is a stock movement and booked nothing.`)
  return orRefuse(await bookable({ opened: first.bookedAt, closed: first.bookedAt }, wish && { corrects: seq, ...wish }, context, { opened: 'seq', closed: 'seq', late: 'late' }))
}

/** The tank as a regrade renamed it, as long as nothing else of it is in force from when the void counts. */
async function tankThatStands({ body: { movement: { kind, at, legs } } }: EntryOf<'stock-moved'>, late: Late | undefined, store: LedgerStore): Promise<{ tank: string; product: string; seq: number; effectiveFrom: string } | null> {
  const named = kind === 'regrade' ? legs[1]?.tank : undefined
  if (named === undefined) return null
  const record = await readRecord(store)
  const standing = tankInForce(record, named.code, late?.bookedAt ?? at, 'seq')
  const version = record.tanks.find((one) => one.seq === named.seq)
  if (!standing.ok || standing.value.version.seq !== named.seq || version === undefined) return null
  return { tank: named.code, product: version.body.tank.product, seq: named.seq, effectiveFrom: version.body.effectiveFrom }
}
