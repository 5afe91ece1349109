import { z } from 'zod'
import { gaugeVerificationSchema, verificationResultSchema } from '../../../core/gauge/index.ts'
import { tankSchema } from '../../../core/tank/index.ts'
import { by, contract, ROLES } from './contract.ts'

export const verifyGauge = contract({
  name: 'verify-gauge', roles: ROLES, ledger: 'none',
  says: 'Automatic level gauge against hand gauges → differences, limits, whether it may be used',
  input: z.strictObject({ tank: tankSchema, verification: gaugeVerificationSchema }),
  output: verificationResultSchema,
})

export const recordGaugeVerification = contract({
  name: 'record-gauge-verification', roles: ['accountant', 'inspector', 'analyst'], ledger: 'writes',
  says: 'Enter the verification of an automatic level gauge; custody tickets stand on the last one',
  input: z.strictObject({ verification: gaugeVerificationSchema, by }),
  output: z.strictObject({ seq: z.number(), hash: z.string(), result: verificationResultSchema }),
})
