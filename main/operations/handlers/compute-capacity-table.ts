import { orRefuse } from '../../../core/refusal/index.ts'
import { computeCapacityTable as compute } from '../../../core/tank/index.ts'
import type { Handler } from '../context.ts'

export const computeCapacityTable: Handler<'compute-capacity-table'> = async ({ survey }) => orRefuse(compute(survey))
