import { lossGain as compareWithBook } from '../../../core/reconciliation/index.ts'
import { orRefuse } from '../../../core/refusal/index.ts'
import type { Handler } from '../context.ts'

export const lossGain: Handler<'loss-gain'> = async (input) => orRefuse(compareWithBook(input))
