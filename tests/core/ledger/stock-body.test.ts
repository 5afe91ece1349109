import { describe, expect, it } from 'vitest'
import { canonicalJson, recomputeStockMovement, stockBody, stockMovementSchema, versionHash, type FindVersions, type StockMovement } from '../../../core/ledger/index.ts'
import type { Product } from '../../../core/quantity/index.ts'
import type { Tank } from '../../../core/tank/index.ts'
import type { Version } from '../../../core/ticket/index.ts'
import { stockMovement, type StockInput } from '../../../core/transfer/index.ts'
import { findingsOf, must } from '../../support/must.ts'
import { aBlend, aDrawOff, aLineFill, aRegrade, aTankToTank } from '../transfer/stock-examples.ts'

const WORDS = { reason: 'Making room for the next ship', reference: 'MOV-7' }

/** Everything that stands in an input, as if entries had set it. */
function shelf(): { readonly of: (thing: Tank | Product) => Version; readonly find: FindVersions } {
  const tanks = new Map<string, Tank>()
  const products = new Map<string, Product>()
  return {
    of: (thing) => {
      const hash = versionHash(thing)
      if ('capacityTable' in thing) tanks.set(hash, thing)
      else products.set(hash, thing)
      return { code: thing.code, seq: tanks.size + products.size, hash }
    },
    find: { tank: ({ hash }) => tanks.get(hash), product: ({ hash }) => products.get(hash) },
  }
}

function entered(input: StockInput): { readonly movement: StockMovement; readonly find: FindVersions } {
  const { of, find } = shelf()
  const version = ({ tank, product }: { readonly tank?: Tank; readonly product: Product }) => ({ product: of(product), ...(tank && { tank: of(tank) }) })
  const parts = (): readonly { readonly tank?: Tank; readonly product: Product }[] => {
    switch (input.kind) {
      case 'tank-to-tank': return [input.from, input.to, ...(input.line ? [{ product: input.line.product }] : [])]
      case 'blend': return [...input.from, input.to, ...(input.line ? [{ product: input.line.product }] : [])]
      case 'regrade': return [input.from, input.to]
      case 'water-draw-off': return [input.tank]
      case 'line-fill': return [{ product: input.line.product }]
    }
  }
  return { movement: stockBody(must(stockMovement(input)), parts().map(version), WORDS), find }
}

const { netOil: _, ...dry } = aDrawOff()
const INPUTS: readonly (readonly [string, StockInput])[] = [
  ['tank to tank', aTankToTank()], ['tank to tank with its line', aTankToTank({ line: aLineFill().line })], ['a blend', aBlend()], ['a blend with a line', aBlend({ line: aLineFill().line })],
  ['a regrade', aRegrade()], ['a water draw-off', aDrawOff()], ['a water draw-off without oil', dry], ['a line fill', aLineFill()],
]

describe.each(INPUTS)('%s, from the ledger alone', (_name, input) => {
  const { movement, find } = entered(input)

  it('comes out in the same words, as read back from canonical JSON', () => {
    const read = stockMovementSchema.parse(JSON.parse(canonicalJson(movement)))
    expect(canonicalJson(must(recomputeStockMovement(read, find)))).toBe(canonicalJson(movement))
  })

  it('comes out different when what is booked was changed', () => {
    const changed: StockMovement = { ...movement, legs: movement.legs.map((leg, i) => (i === 0 ? { ...leg, nsv: { ...leg.nsv, value: leg.nsv.value.replace(/\d(?=\.)/, (digit) => String((Number(digit) + 1) % 10)) } } : leg)) }
    const again = recomputeStockMovement(changed, find)
    // the oil that went with the water is stated in the leg, so that its lines differ and not the leg
    expect(canonicalJson(again.ok ? again.value : null)).not.toBe(canonicalJson(changed))
  })

  it('is damaged without its versions, and without its gauges', () => {
    const codes = (movementOf: StockMovement, findOf: FindVersions): readonly string[] => findingsOf(recomputeStockMovement(movementOf, findOf)).map(({ code }) => code)
    expect(codes(movement, { tank: () => undefined, product: () => undefined })).toEqual(['ledger-damaged'])
    expect(codes({ ...movement, legs: movement.legs.map(({ opening: _o, closing: _c, contents: _n, ...leg }) => leg) }, find)).toEqual(['ledger-damaged'])
  })
})
