import { z } from 'zod'
import { gaugeSnapshotSchema } from '../../../core/gauge/index.ts'
import { worksheetSchema } from '../../../core/quantity/index.ts'
import { contract } from './contract.ts'

export const recordInventory = contract({
  name: 'record-inventory', roles: ['accountant', 'analyst'], ledger: 'writes',
  says: 'Enter a measured inventory of a tank: compared with the book, never plugged into it',
  input: z.strictObject({ snapshot: gaugeSnapshotSchema, by: z.string().min(1).max(80) }),
  output: z.strictObject({ seq: z.number(), hash: z.string(), worksheet: worksheetSchema }),
})

export const postAdjustment = contract({
  name: 'post-adjustment', roles: ['accountant'], ledger: 'writes',
  says: 'Enter an approved adjustment of the book of a tank, with its reason',
  input: z.strictObject({ tank: z.string(), effectiveAt: z.string(), nsv: z.string().max(64), reason: z.string().max(500), approvedBy: z.string().min(1).max(80) }),
  output: z.strictObject({ seq: z.number(), hash: z.string() }),
})
