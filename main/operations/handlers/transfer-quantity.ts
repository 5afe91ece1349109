import { orRefuse } from '../../../core/refusal/index.ts'
import { transferQuantity as compute } from '../../../core/transfer/index.ts'
import type { Handler } from '../context.ts'

export const transferQuantity: Handler<'transfer-quantity'> = async (input) => orRefuse(compute(input))
