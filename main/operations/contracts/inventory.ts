import { z } from 'zod'
import { gaugeSnapshotSchema } from '../../../core/gauge/index.ts'
import { worksheetSchema } from '../../../core/quantity/index.ts'
import { by, contract } from './contract.ts'
import { late } from './late.ts'

export const recordInventory = contract({
  name: 'record-inventory', roles: ['accountant', 'analyst'], ledger: 'writes',
  says: 'Enter a measured inventory of a tank: compared with the book, never plugged into it',
  input: z.strictObject({ snapshot: gaugeSnapshotSchema, by }),
  output: z.strictObject({ seq: z.number(), hash: z.string(), worksheet: worksheetSchema }),
})

export const postAdjustment = contract({
  name: 'post-adjustment', roles: ['accountant'], approval: true, ledger: 'writes',
  says: 'Enter an approved adjustment of the book of a tank, with its reason',
  input: z.strictObject({
    tank: z.string(), effectiveAt: z.string(), nsv: z.string().max(64), reason: z.string().max(500),
    /** The name of the approver; where two people are needed, whoever approves it here. */
    approvedBy: by, by, late,
  }),
  output: z.strictObject({ seq: z.number(), hash: z.string() }),
})
