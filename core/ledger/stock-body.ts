import type { Product } from '../quantity/index.ts'
import { accepted, andThen, refused, type Finding, type Outcome } from '../refusal/index.ts'
import type { Tank } from '../tank/index.ts'
import type { Version } from '../ticket/index.ts'
import { stockMovement, type FilledLine, type GaugedTank, type RegradedTank, type StockInput, type StockResult } from '../transfer/index.ts'
import type { StockLeg, StockMovement } from './stock.ts'

/** The versions that a leg stands on: a line has no tank. */
export interface LegVersions { readonly product: Version; readonly tank?: Version | undefined }

/** What a movement says beside its numbers. */
export type StockWords = Pick<StockMovement, 'reason' | 'reference'>

/**
 * The body of an entry, from what was computed and the versions that it was computed with.
 * @param result what the gauges say
 * @param versions by leg, in the order of the result
 * @source HOUSE stock movements
 */
export function stockBody({ kind, at, legs, difference, unbooked, lines, exceptions }: StockResult, versions: readonly LegVersions[], { reason, reference }: StockWords): StockMovement {
  return {
    kind, at, difference, ...(unbooked !== undefined && { unbooked }), lines, exceptions, reason, ...(reference !== undefined && { reference }),
    legs: legs.map((leg, i): StockLeg => {
      const of = versions[i]
      if (of === undefined) throw new Error(`leg ${i} of a ${kind} has no versions`)
      const { product: _code, ...figures } = leg
      return { ...figures, product: of.product, ...(of.tank !== undefined && { tank: of.tank }) }
    }),
  }
}

/** Finds the tank or product that a version names; undefined when the ledger has none such. */
export interface FindVersions {
  readonly tank: (version: Version) => Tank | undefined
  readonly product: (version: Version) => Product | undefined
}

/**
 * What the body of a `stock-moved` entry should be, from what it says was read and the versions that it names; from the
 * ledger alone, in the same words, so that the two can be held against each other.
 * Refuses `ledger-damaged` where a leg lacks what it was computed from, and whatever {@link stockMovement} refuses.
 * @param movement as it stands in the ledger
 * @param find versions by what the legs name
 * @source HOUSE stock movements
 */
export function recomputeStockMovement(movement: StockMovement, find: FindVersions): Outcome<StockMovement> {
  const versions = movement.legs.map(({ product, tank }): LegVersions => ({ product, ...(tank !== undefined && { tank }) }))
  return andThen(inputOf(movement, find), (input) => andThen(stockMovement(input), (result) => accepted(stockBody(result, versions, movement))))
}

/** What was handed in when the movement was computed. */
function inputOf({ kind, legs }: StockMovement, find: FindVersions): Outcome<StockInput> {
  const tanks = legs.filter(({ place }) => place === 'tank')
  const lines = legs.filter(({ place }) => place === 'line').map((leg) => filledLine(leg, find))
  const line = lines[0]
  const withLine = line === undefined ? {} : { line }
  if (lines.length > 1 || lines.includes(undefined)) return lacking('legs', 'one line with its contents')
  switch (kind) {
    case 'tank-to-tank': {
      const [from, to, more] = tanks.map((leg) => gaugedTank(leg, find))
      return from && to && more === undefined && tanks.length === 2 ? accepted({ kind, from, to, ...withLine }) : lacking('legs', 'two tanks with their gauges')
    }
    case 'blend': {
      const read = tanks.map((leg) => gaugedTank(leg, find))
      const gauged = read.flatMap((tank) => tank ?? [])
      const to = gauged.at(-1)
      return to && gauged.length === read.length && gauged.length > 1 ? accepted({ kind, from: gauged.slice(0, -1), to, ...withLine }) : lacking('legs', 'two tanks or more with their gauges')
    }
    case 'regrade': {
      const [from, to] = [regraded(tanks[0], 'opening', find), regraded(tanks[1], 'closing', find)]
      return from && to && legs.length === 2 ? accepted({ kind, from, to }) : lacking('legs', 'one tank under two names, each with its gauge')
    }
    case 'water-draw-off': {
      const tank = tanks[0] && gaugedTank(tanks[0], find)
      const nsv = tanks[0]?.nsv
      return tank && nsv && legs.length === 1 ? accepted({ kind, tank, netOil: `${negative(nsv.value)} ${nsv.unit}` }) : lacking('legs', 'one tank with its gauges')
    }
    case 'line-fill': return line && legs.length === 1 ? accepted({ kind, line }) : lacking('legs', 'one line with its contents')
  }
}

function lacking(path: string, limit: string): Outcome<never> {
  const finding: Finding = { code: 'ledger-damaged', path, value: 'the movement cannot be computed again from what its entry says', limit: `it should have ${limit}, and the versions that it names`, clause: 'HOUSE stock movements' }
  return refused(finding)
}

function gaugedTank({ opening, closing, product, tank }: StockLeg, find: FindVersions): GaugedTank | undefined {
  const found = { tank: tank && find.tank(tank), product: find.product(product) }
  return found.tank && found.product && opening && closing && { tank: found.tank, product: found.product, opening, closing }
}

function regraded(leg: StockLeg | undefined, side: 'opening' | 'closing', find: FindVersions): RegradedTank | undefined {
  const [gauge, other] = [leg?.[side], leg?.[side === 'opening' ? 'closing' : 'opening']]
  const found = { tank: leg?.tank && find.tank(leg.tank), product: leg && find.product(leg.product) }
  return found.tank && found.product && gauge && !other ? { tank: found.tank, product: found.product, gauge } : undefined
}

function filledLine({ code, product, contents }: StockLeg, find: FindVersions): FilledLine | undefined {
  const found = find.product(product)
  return found && contents && { code, product: found, opening: contents.opening, closing: contents.closing }
}

/** The text of a decimal with its sign turned; digits stay as they are. */
function negative(text: string): string {
  return text.startsWith('-') ? text.slice(1) : /^[0.]+$/.test(text) ? text : `-${text}`
}
