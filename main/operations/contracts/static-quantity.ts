import { z } from 'zod'
import { gaugeSnapshotSchema } from '../../../core/gauge/index.ts'
import { productSchema, worksheetSchema } from '../../../core/quantity/index.ts'
import { tankSchema } from '../../../core/tank/index.ts'
import { contract, ROLES } from './contract.ts'

export const staticQuantity = contract({
  name: 'static-quantity', roles: ROLES, ledger: 'none',
  says: 'Tank, product and gauge snapshot → worksheet from TOV to NSV, mass and weight',
  input: z.strictObject({ tank: tankSchema, product: productSchema, snapshot: gaugeSnapshotSchema }),
  output: worksheetSchema,
})
