import { instantKey, versionInForce, type PeriodStanding } from '../../core/ledger/index.ts'
import { BOUNDARY_WINDOW_HOURS, reconcilePeriod, underEachName, type BookedMovement, type NamedProduct, type Reconciliation, type TankRecord } from '../../core/reconciliation/index.ts'
import { parseInstant } from '../../core/gauge/index.ts'
import { allOf, orRefuse } from '../../core/refusal/index.ts'
import type { AsItStood, LedgerStore } from '../store/index.ts'
import { reportedPeriod } from './late-lines.ts'
import { readRecord, tankInForce, terminalOn, type OnRecord } from './on-record.ts'

const WINDOW = BOUNDARY_WINDOW_HOURS * 3_600_000

/** The period reconciled from what the ledger holds; cost follows the period, not the history kept. */
export async function reconcileLedger(store: LedgerStore, { from, to }: Span): Promise<Reconciliation> {
  const report = await reconcileRecord(store, { from, to })
  const own = (await store.periods()).find((period) => instantKey(period.from) === instantKey(from) && instantKey(period.to) === instantKey(to))
  return own === undefined ? report : { ...report, period: await reportedPeriod(store, own, await readRecord(store)) }
}

interface Span { readonly from: string; readonly to: string }

/** The same without what is said of a period that has these very ends; from a ledger as it stood, too. */
export async function reconcileRecord(store: AsItStood, { from, to }: Span): Promise<Reconciliation> {
  orRefuse(allOf<{ from: unknown; to: unknown }>({ from: parseInstant(from, 'from'), to: parseInstant(to, 'to') }))
  const record = await readRecord(store)
  const head = await store.head()
  const terminal = orRefuse(terminalOn(record, 'ledger'))
  const tanks = await Promise.all(tanksInForce(record, to).map((tank) => recordOf(store, tank, shifted(from, -WINDOW), shifted(to, WINDOW))))
  const named = (code: string): NamedProduct | undefined => productNamed(record, code, to)
  const periods = await store.periods()
  const ending = (at: string): PeriodStanding | undefined => periods.find(({ to: end }) => instantKey(end) === instantKey(at))
  const settled = { from: ending(from)?.closedBy ?? undefined, to: ending(to)?.closedBy ?? undefined }
  return orRefuse(reconcilePeriod({ terminal, settled, from, to, tanks: tanks.flatMap((tank) => underEachName(tank, { from, to, closedBy: settled.to }, named)), limits: await limitsInForce(store, to), ledger: { seq: head.seq, head: head.hash } }))
}

type Tank = Omit<TankRecord, 'measurements' | 'movements'>

/** Tanks as they stand at the end of the period, each with its product. */
function tanksInForce(record: OnRecord, at: string): readonly Tank[] {
  const codes = [...new Set(record.tanks.map((entry) => entry.body.tank.code))]
  return codes.flatMap((code): readonly Tank[] => {
    const tank = tankInForce(record, code, at, 'to')
    const product = tank.ok ? productNamed(record, tank.value.value.product, at) : undefined
    return product === undefined ? [] : [{ tank: code, ...product }]
  })
}

function productNamed(record: OnRecord, code: string, at: string): NamedProduct | undefined {
  const product = versionInForce(record.products, code, at)?.body.product
  return product && { product: code, productName: product.name, volumeUnit: product.volumeUnit }
}

async function recordOf(store: AsItStood, tank: Tank, from: string, to: string): Promise<TankRecord> {
  const [measurements, { booked, underWay }] = await Promise.all([store.measurements(from, to, tank.tank), store.everMoved(tank.tank, from, to)])
  const here = new Set(booked.map(nameOf))
  // what counts elsewhere matters by its gauges alone, and once it was taken back its time is free
  const elsewhere = underWay.filter((movement) => !here.has(nameOf(movement))).map((movement): BookedMovement => ({ ...movement, voidedBy: movement.voidedBy ?? movement.correctedBy }))
  return { ...tank, measurements, movements: [...booked, ...elsewhere] }
}

function nameOf({ seq, product }: BookedMovement): string {
  return `${seq} ${product}`
}

async function limitsInForce(store: AsItStood, at: string) {
  const entries = await store.entriesOfKind('limit-set')
  const products = [...new Set(entries.map((entry) => entry.body.limit.product))]
  return new Map(products.flatMap((product) => {
    const entry = versionInForce(entries, product, at)
    return entry === undefined ? [] : [[product, entry.body.limit] as const]
  }))
}

function shifted(at: string, milliseconds: number): string {
  return `${new Date(Date.parse(at) + milliseconds).toISOString().slice(0, 19)}Z`
}
