import { parseInstant, type GaugeSnapshot } from '../../core/gauge/index.ts'
import { instantKey, versionHash, type LegVersions, type Posting } from '../../core/ledger/index.ts'
import type { Product } from '../../core/quantity/index.ts'
import { accepted, allOf, andThen, refused, type Finding, type Outcome } from '../../core/refusal/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import { stockMovement, type FilledLine, type GaugedTank, type StockInput, type StockResult } from '../../core/transfer/index.ts'
import type { LedgerStore } from '../store/index.ts'
import type { ParsedInput } from './context.ts'
import { productInForce, tankInForce, type InForce, type OnRecord } from './on-record.ts'
import { notYetCovered, noTank, oneVersion } from './tank-time.ts'
import { notInFuture } from './times.ts'

type Draft = ParsedInput<'post-stock-movement'>['movement']
type Gauges = Extract<Draft, { kind: 'water-draw-off' }>['tank']
type Line = Extract<Draft, { kind: 'line-fill' }>['line']

/** What a movement stands on: what it computes to, the versions of its legs, and the tank that a regrade brings into force. */
export interface StockBasis { readonly result: StockResult; readonly versions: readonly LegVersions[]; readonly renamed: Tank | null }

/** What a movement is judged against; the sequence is that which a tank brought into force by it would have. */
export interface Books { readonly record: OnRecord; readonly store: LedgerStore; readonly now: string; readonly nextSeq: number }

interface Part<T> { readonly value: T; readonly versions: LegVersions }

/** Finds what a draft names and computes what it books; every finding at once, at `movement.…`. */
export async function stockBasis(draft: Draft, books: Books): Promise<Outcome<StockBasis>> {
  switch (draft.kind) {
    case 'tank-to-tank': {
      const parts = allOf<{ from: Part<GaugedTank>; to: Part<GaugedTank>; line: Part<FilledLine> | undefined }>({
        from: await gaugedTank(draft.from, 'movement.from', books), to: await gaugedTank(draft.to, 'movement.to', books), line: optionalLine(draft.line, books),
      })
      return andThen(parts, ({ from, to, line }) => computed({ kind: draft.kind, from: from.value, to: to.value, ...(line && { line: line.value }) }, [from, to, ...(line ? [line] : [])]))
    }
    case 'blend': {
      const read = await Promise.all(draft.from.map((gauges, i) => gaugedTank(gauges, `movement.from.${i}`, books)))
      const parts = allOf<{ from: readonly Part<GaugedTank>[]; to: Part<GaugedTank>; line: Part<FilledLine> | undefined }>({
        from: all(read), to: await gaugedTank(draft.to, 'movement.to', books), line: optionalLine(draft.line, books),
      })
      return andThen(parts, ({ from, to, line }) => computed({ kind: draft.kind, from: from.map(({ value }) => value), to: to.value, ...(line && { line: line.value }) }, [...from, to, ...(line ? [line] : [])]))
    }
    case 'regrade': return regraded(draft, books)
    case 'water-draw-off': {
      const tank = await gaugedTank(draft.tank, 'movement.tank', books)
      return andThen(tank, (part) => computed({ kind: draft.kind, tank: part.value, ...(draft.netOil !== undefined && { netOil: draft.netOil }) }, [part]))
    }
    case 'line-fill': return andThen(filledLine(draft.line, books), (line) => computed({ kind: draft.kind, line: line.value }, [line]))
  }
}

function all<T>(outcomes: readonly Outcome<T>[]): Outcome<readonly T[]> {
  const findings = outcomes.flatMap((one) => (one.ok ? [] : one.findings))
  return findings.length > 0 ? refused(...findings) : accepted(outcomes.flatMap((one) => (one.ok ? [one.value] : [])))
}

/** Computes; what the core finds stands under the movement. */
function computed(input: StockInput, parts: readonly Part<unknown>[], renamed: Tank | null = null): Outcome<StockBasis> {
  const result = stockMovement(input)
  if (result.ok) return accepted({ result: result.value, versions: parts.map(({ versions }) => versions), renamed })
  return refused(...result.findings.map((finding): Finding => ({ ...finding, path: `movement.${finding.path}` })))
}

/** A tank and product as they are in force at the opening gauge, neither changed before the closing one, its time free. */
async function gaugedTank({ opening, closing }: Gauges, path: string, { record, store, now }: Books): Promise<Outcome<Part<GaugedTank>>> {
  const times = [notInFuture(opening.at, now, `${path}.opening.at`), notInFuture(closing.at, now, `${path}.closing.at`)] as const
  const at = parseInstant(opening.at, '').ok ? opening.at : now
  const tank = tankInForce(record, opening.tank, at, `${path}.opening.tank`)
  const product = productInForce(record, opening.product, at, `${path}.opening.product`)
  const found = allOf<{ opened: unknown; closed: unknown; tank: InForce<Tank>; product: InForce<Product>; version: null; free: null }>({
    opened: times[0], closed: times[1], tank, product,
    version: tank.ok && product.ok ? oneVersion(closing.at, { tank: tank.value.version, product: product.value.version }, record, `${path}.closing.at`) : accepted(null),
    free: await notYetCovered({ tank: opening.tank, opened: opening.at, closed: closing.at, path: `${path}.opening.at` }, store),
  })
  return andThen(found, (read) => accepted({
    value: { tank: read.tank.value, product: read.product.value, opening, closing }, versions: { product: read.product.version, tank: read.tank.version },
  }))
}

function optionalLine(line: Line | undefined, books: Books): Outcome<Part<FilledLine> | undefined> {
  return line === undefined ? accepted(undefined) : filledLine(line, books)
}

function filledLine({ code, product: name, opening, closing }: Line, { record, now }: Books): Outcome<Part<FilledLine>> {
  const at = parseInstant(opening.at, '').ok ? opening.at : now
  const found = allOf<{ opened: unknown; closed: unknown; code: null; product: InForce<Product> }>({
    opened: notInFuture(opening.at, now, 'movement.line.opening.at'), closed: notInFuture(closing.at, now, 'movement.line.closing.at'),
    code: noTank(code, record, 'movement.line.code'), product: productInForce(record, name, at, 'movement.line.product'),
  })
  return andThen(found, ({ product }) => accepted({ value: { code, product: product.value, opening, closing }, versions: { product: product.version } }))
}

/**
 * A regrade comes with the tank's next version, which names the new product from that instant on: one that is on record
 * already, or one that is entered with it.
 */
async function regraded({ gauge, to }: Extract<Draft, { kind: 'regrade' }>, { record, store, now, nextSeq }: Books): Promise<Outcome<StockBasis>> {
  const path = 'movement.gauge'
  const at = parseInstant(gauge.at, '').ok ? gauge.at : now
  const own = record.tanks.filter(({ body }) => body.tank.code === gauge.tank)
  const next = own.findLast(({ body }) => body.tank.product === to.product && instantKey(body.effectiveFrom) === instantKey(at))
  const before = { tanks: record.tanks.filter((entry) => entry !== next) }
  const found = allOf<{ time: unknown; tank: InForce<Tank>; old: InForce<Product>; name: InForce<Product>; free: null; since: null }>({
    time: notInFuture(gauge.at, now, `${path}.at`),
    tank: tankInForce(before, gauge.tank, at, `${path}.tank`),
    old: productInForce(record, gauge.product, at, `${path}.product`), name: productInForce(record, to.product, at, 'movement.to.product'),
    free: await notYetCovered({ tank: gauge.tank, opened: at, closed: at, path: `${path}.at` }, store),
    since: await nothingSince(gauge, to.product, { record: before, store, now }, `${path}.at`),
  })
  return andThen(found, ({ tank, old, name }) => {
    const renamed = next?.body.tank ?? { ...tank.value, product: to.product }
    const version = { code: gauge.tank, seq: next?.seq ?? nextSeq, hash: versionHash(renamed) }
    const taken: GaugeSnapshot = { ...gauge, product: to.product, ...(to.density !== undefined && { density: to.density }) }
    return computed({ kind: 'regrade', from: { tank: tank.value, product: old.value, gauge }, to: { tank: renamed, product: name.value, gauge: taken } }, [
      { value: null, versions: { product: old.version, tank: tank.version } }, { value: null, versions: { product: name.version, tank: version } },
    ], next === undefined ? renamed : null)
  })
}

/** What was entered of the tank for a later time stands under another name: then it is too late to rename it. */
async function nothingSince({ tank, at }: GaugeSnapshot, name: string, { record, store, now }: { readonly record: Pick<OnRecord, 'tanks'>; readonly store: LedgerStore; readonly now: string }, path: string): Promise<Outcome<null>> {
  if (!parseInstant(at, '').ok || instantKey(at) > instantKey(now)) return accepted(null)
  const key = instantKey(at)
  const version = record.tanks.find(({ body }) => body.tank.code === tank && body.tank.product !== name && instantKey(body.effectiveFrom) > key)
  const movement = (await store.movements(at, now, tank)).find(({ product }) => product !== name)
  const measured = (await store.measurements(at, now, tank)).find((one) => one.product !== name && instantKey(one.at) > key)
  const found = [
    ...(version === undefined ? [] : [`entry ${version.seq} has it in service for ${version.body.tank.product} from ${version.body.effectiveFrom} on`]),
    ...(movement === undefined ? [] : [`entry ${movement.seq} moved ${movement.product} there at ${movement.closedAt}`]),
    ...(measured === undefined ? [] : [`entry ${measured.seq} measured ${measured.product} there at ${measured.at}`]),
  ]
  return found.length === 0 ? accepted(null) : refused({ code: 'another-name-since', path, value: tank, limit: found.join('; '), clause: 'HOUSE stock movements' })
}

/** The postings of a movement: the tank that it renames first. */
export function tankUnderItsNewName(renamed: Tank | null, effectiveFrom: string, { at, by }: { readonly at: string; readonly by: string }): readonly Posting[] {
  return renamed === null ? [] : [{ kind: 'tank-set', at, by, body: { tank: renamed, effectiveFrom } }]
}

