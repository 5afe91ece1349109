import type { GaugeSnapshot } from '../gauge/index.ts'
import { accepted, refused, type Finding, type Outcome } from '../refusal/index.ts'
import type { Tank } from '../tank/index.ts'
import type { Product } from './product.ts'

/**
 * Checks that tank, product and snapshot speak of the same thing: the snapshot names the tank and the product, and the
 * tank is in service for the product. All findings at once.
 * Refuses `tank-differs`, `product-differs`.
 * @param path of the snapshot
 * @source MPMS-12.1.1 tank and product
 */
export function checkBelongs(tank: Tank, product: Product, snapshot: GaugeSnapshot, path: string): Outcome<null> {
  const findings: Finding[] = []
  const clause = 'HOUSE gauge snapshot'
  if (snapshot.tank !== tank.code) findings.push({ code: 'tank-differs', path: `${path}.tank`, value: snapshot.tank, limit: tank.code, clause })
  if (snapshot.product !== product.code) findings.push({ code: 'product-differs', path: `${path}.product`, value: snapshot.product, limit: product.code, clause })
  if (tank.product !== product.code) findings.push({ code: 'product-differs', path: 'tank.product', value: product.code, limit: tank.product, clause })
  return findings.length > 0 ? refused(...findings) : accepted(null)
}
