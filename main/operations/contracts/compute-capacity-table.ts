import { z } from 'zod'
import { capacityTableSchema, tankSurveySchema } from '../../../core/tank/index.ts'
import { contract, ROLES } from './contract.ts'

export const computeCapacityTable = contract({
  name: 'compute-capacity-table', roles: ROLES, ledger: 'none',
  says: 'What was measured at a tank → its capacity table, with the lines that say how it was made',
  input: z.strictObject({ survey: tankSurveySchema }),
  output: capacityTableSchema,
})
