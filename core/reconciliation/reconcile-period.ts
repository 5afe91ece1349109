import { parseInstant } from '../gauge/index.ts'
import { accepted, refused, andThen, wording, type Finding, type Outcome } from '../refusal/index.ts'
import type { Terminal } from '../ticket/index.ts'
import { lossGain } from './book-and-measured.ts'
import { boundaryInventory } from './boundary.ts'
import { instant, isGauged, type BookedMovement, type MeasuredInventory, type TankRecord } from './gauged.ts'
import type { Limit } from './loss-gain.ts'
import { namedTwice } from './names-of-tank.ts'
import { oppositePairs } from './opposite-pairs.ts'
import { reconcileProducts, type ReconciledTank } from './products.ts'
import type { Reconciliation } from './reconciliation.ts'
import { asItStood, countedBetween, negative, type Settled } from './settled.ts'
import { unbookedSteps } from './unbooked-steps.ts'

/** What a period is reconciled from; pure data out of the ledger. */
export interface PeriodRecord {
  readonly terminal: Terminal
  /** The period, RFC 3339 instants; tanks are reconciled between the inventories nearest to them. */
  readonly from: string
  readonly to: string
  readonly tanks: readonly TankRecord[]
  /** Product code → limit in force. */
  readonly limits: ReadonlyMap<string, Limit>
  readonly ledger: { readonly seq: number; readonly head: string }
  /** Entries that closed the periods which end at `from` and at `to`, where they are closed: what was posted or voided later changes neither end. */
  readonly settled?: Settled
}

/**
 * Book against measured inventory over a period, per tank and per product.
 * Each tank runs from the inventory that stands for `from` to the one that stands for `to` ({@link boundaryInventory});
 * a ticket or stock movement counts when both its gauges lie between the two, an adjustment when it takes effect after the first and not
 * after the second. So a ticket partly outside the period counts in the month in whose inventories it shows, once. A closed
 * period is reconciled from what stood when it was closed, and what changed since counts in the next ({@link countedBetween}).
 * A tank that cannot be reconciled is listed with the reason and leaves the rest standing; a product adds up its
 * reconciled tanks. Refuses `unreadable-value` and `period-backwards`; and, when not one tank can be reconciled, all
 * the reasons.
 * @param record terminal, period, tanks with their gauges and movements, limits and the ledger's head
 * @source MPMS-23.1
 */
export function reconcilePeriod(record: PeriodRecord): Outcome<Reconciliation> {
  const wrong = wrongPeriod(record)
  if (wrong.length > 0) return refused(...wrong)
  const outcomes = record.tanks.toSorted((a, b) => (a.tank < b.tank ? -1 : a.tank > b.tank ? 1 : 0)).map((tank) => ({ tank, outcome: reconcileTank(tank, record) }))
  const done = outcomes.flatMap(({ outcome }) => (outcome.ok ? [outcome.value] : []))
  if (done.length === 0 && outcomes.length > 0) return refused(...outcomes.flatMap(({ outcome }) => (outcome.ok ? [] : outcome.findings)))
  const several = namedTwice(record.tanks)
  const missing = outcomes.flatMap(({ tank: { tank, product }, outcome }) => (outcome.ok ? [] : [{ tank, ...several.has(tank) ? { product } : {}, message: outcome.findings.map(wording).join(' ') }]))
  return accepted({
    schema: 'dipledger-reconciliation-1', terminal: record.terminal, from: record.from, to: record.to,
    tanks: done.map(({ report }) => report), products: [...reconcileProducts(done)], oppositePairs: [...oppositePairs(done.map(({ report }) => report))],
    missing, ledger: record.ledger,
  })
}

function reconcileTank(tank: TankRecord, period: PeriodRecord): Outcome<ReconciledTank> {
  const limit = period.limits.get(tank.product)
  if (limit === undefined) return refused({ code: 'missing-value', path: `the limit of ${tank.product}`, value: '', limit: 'set a limit that is in force at the end of the period', clause: 'MPMS-23.1' })
  const { settled = {} } = period
  const known = asItStood(tank, settled.to)
  const opening = boundaryInventory(settled.from === undefined ? known : asItStood(tank, settled.from), period.from, 'from')
  const closing = boundaryInventory(known, period.to, 'to')
  if (!opening.ok || !closing.ok) return refused(...(opening.ok ? [] : opening.findings), ...(closing.ok ? [] : closing.findings))
  const between = known.measurements.filter(({ at }) => instant(opening.value.at) < instant(at) && instant(at) <= instant(closing.value.at))
  const inventories = [opening.value, ...between]
  const movements = countedBetween({ tank, settled }, opening.value.at, closing.value.at).toSorted((a, b) => instant(a.closedAt) - instant(b.closedAt) || a.seq - b.seq)
  const foreign = foreignRecords(tank, [...inventories, ...movements])
  if (foreign.length > 0) return refused(...foreign)
  const figures = figuresOf(tank, opening.value, closing.value, movements)
  return andThen(boundariesApart(opening.value, closing.value), () => andThen(lossGain({ ...figures, limit }), (result) => accepted({
    limit, figures,
    report: {
      tank: tank.tank, product: tank.product, productName: tank.productName, openingAt: opening.value.at, closingAt: closing.value.at,
      receiptTickets: movements.filter(({ kind }) => kind === 'receipt').map(({ number }) => number),
      deliveryTickets: movements.filter(({ kind }) => kind === 'delivery').map(({ number }) => number),
      transfers: movements.filter((movement) => columnOf(movement).startsWith('transfers')).map(({ seq, kind, number, change, unit, closedAt }) => ({ seq, kind, number, at: closedAt, nsv: { value: change, unit } })),
      result, steps: [...unbookedSteps(inventories, movements, tank.volumeUnit)],
    },
  })))
}

type Column = 'receipts' | 'deliveries' | 'transfersIn' | 'transfersOut' | 'adjustments'

/** Under which head a movement is added up; what an adjustment is, or corrects another period, keeps its sign. */
function columnOf(movement: BookedMovement): Column {
  if (!isGauged(movement)) return 'adjustments'
  switch (movement.kind) {
    case 'receipt': return 'receipts'
    case 'delivery': return 'deliveries'
    case 'tank-to-tank': case 'blend': case 'regrade': return movement.change.startsWith('-') ? 'transfersOut' : 'transfersIn'
    default: return 'adjustments'
  }
}

function figuresOf(tank: TankRecord, opening: MeasuredInventory, closing: MeasuredInventory, movements: readonly BookedMovement[]): ReconciledTank['figures'] {
  const changes = (column: Column): string[] => movements.filter((movement) => columnOf(movement) === column)
    .map(({ change, unit }) => `${column === 'deliveries' || column === 'transfersOut' ? negative(change) : change} ${unit}`)
  return {
    unit: tank.volumeUnit, opening: `${opening.nsv} ${opening.unit}`, closing: `${closing.nsv} ${closing.unit}`,
    receipts: changes('receipts'), deliveries: changes('deliveries'), transfersIn: changes('transfersIn'), transfersOut: changes('transfersOut'), adjustments: changes('adjustments'),
  }
}

function foreignRecords(tank: TankRecord, records: readonly { readonly product: string; readonly unit: string; readonly seq: number }[]): readonly Finding[] {
  return records.filter((found) => found.product !== tank.product || found.unit !== tank.volumeUnit).slice(0, 1).map((found): Finding => ({
    code: 'product-differs', path: `${tank.tank} (ledger entry ${String(found.seq)})`, value: `${found.product} in ${found.unit}`, limit: `${tank.product} in ${tank.volumeUnit}`, clause: 'HOUSE reconciliation',
  }))
}

function boundariesApart(opening: MeasuredInventory, closing: MeasuredInventory): Outcome<true> {
  if (instant(opening.at) < instant(closing.at)) return accepted(true)
  return refused({ code: 'inventory-missing', path: 'to', value: 'the end of the period', limit: `the inventory of ${opening.at} would stand for both ends`, clause: 'HOUSE reconciliation' })
}

function wrongPeriod(record: PeriodRecord): readonly Finding[] {
  const unreadable = (['from', 'to'] as const).map((path) => parseInstant(record[path], path)).flatMap((read) => (read.ok ? [] : read.findings))
  if (unreadable.length > 0 || instant(record.from) < instant(record.to)) return unreadable
  return [{ code: 'period-backwards', path: 'to', value: record.to, limit: record.from, clause: 'HOUSE reconciliation' }]
}
