import type { GaugeSnapshot } from '../gauge/index.ts'
import { staticQuantity, type Worksheet } from '../quantity/index.ts'
import { compared, type Before, type Recompute, type Recomputed } from './recompute.ts'
import type { StockLeg } from './stock.ts'

/**
 * A movement inside the terminal made again: the worksheet of every gauge, by the tank and product that each leg names.
 * @source MPMS-12.1.1 calculation of static quantities
 */
export const recomputeStock: Recompute<'stock-moved'> = ({ body: { movement } }, before) => movement.legs.flatMap((leg, i) => [
  ...gauged(leg, `leg ${i + 1}, opening`, leg.opening, leg.openingWorksheet, before), ...gauged(leg, `leg ${i + 1}, closing`, leg.closing, leg.closingWorksheet, before),
])

function gauged({ tank: named, product: ofProduct }: StockLeg, place: string, snapshot: GaugeSnapshot | undefined, worksheet: Worksheet | undefined, before: Before): readonly Recomputed[] {
  if (snapshot === undefined || worksheet === undefined) return []
  const [tank, product] = [named && before.tank(named.seq), before.product(ofProduct.seq)]
  if (tank === undefined || product === undefined) return [{ place, stands: 'a gauge', gives: 'no tank or no product by which it was computed' }]
  return compared(place, worksheet, staticQuantity(tank, product, snapshot, 'snapshot'))
}
