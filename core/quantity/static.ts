import type { GaugeSnapshot } from '../gauge/index.ts'
import type { Outcome } from '../refusal/index.ts'
import type { Tank } from '../tank/index.ts'
import type { Product } from './product.ts'
import type { Worksheet } from './worksheet.ts'

export function staticQuantity(tank: Tank, product: Product, snapshot: GaugeSnapshot, path = 'snapshot'): Outcome<Worksheet> {
  void tank; void product; void snapshot; void path
  throw new Error('not written yet')
}
