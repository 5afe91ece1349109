import { compared, inForce, type Before, type Recompute, type Recomputed } from './recompute.ts'
import { recomputeStockMovement } from './stock-body.ts'
import type { StockMovement } from './stock.ts'

/**
 * A movement inside the terminal made again: every gauge, leg and line, by the tanks and products that it names, and these
 * as they were in force.
 * @source HOUSE stock movements
 */
export const recomputeStock: Recompute<'stock-moved'> = ({ body: { movement } }, before) => [
  ...compared('movement', movement, recomputeStockMovement(movement, { tank: ({ seq }) => before.tank(seq), product: ({ seq }) => before.product(seq) })),
  ...versions(movement, before),
]

/** A regrade gives the old tank up at the instant at which the new one comes into force. */
function versions({ kind, at, legs }: StockMovement, before: Before): readonly Recomputed[] {
  return legs.flatMap(({ product, tank, opening, closing, contents }) => {
    const then = opening?.at ?? closing?.at ?? contents?.opening.at ?? at
    const given = kind === 'regrade' && closing === undefined
    return [...inForce('product', product, then, before), ...(tank === undefined || given ? [] : inForce('tank', tank, then, before))]
  })
}
