import { z } from 'zod'
import { capacityTableSchema, DECIMAL_MARKS, TABLE_LAYOUTS } from '../../../core/tank/index.ts'
import { contract, ROLES } from './contract.ts'

export const readCapacityTable = contract({
  name: 'read-capacity-table', roles: ROLES, ledger: 'none', file: 'file',
  says: 'A calibration company\'s CSV → a checked capacity table, with the steps that stand out',
  input: z.strictObject({
    name: z.string().max(200).optional(), file: z.base64(),
    /** The layout that is expected; left out, the file says it. */
    layout: z.enum(TABLE_LAYOUTS).optional(),
    /** Left out, the file says it, else it is a point. */
    decimalMark: z.enum(DECIMAL_MARKS).optional(),
    /** By how much a step may differ from those beside it: `2 %`; and whether a jump is noted in the table or refused. */
    jumps: z.strictObject({ share: z.string().max(20), then: z.enum(['warn', 'refuse']) }).optional(),
  }),
  output: capacityTableSchema,
})
