import { staticQuantity as compute } from '../../../core/quantity/index.ts'
import { orRefuse } from '../../../core/refusal/index.ts'
import type { Handler } from '../context.ts'

export const staticQuantity: Handler<'static-quantity'> = async ({ tank, product, snapshot }) =>
  orRefuse(compute(tank, product, snapshot))
