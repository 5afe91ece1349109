import { z } from 'zod'
import { capacityTableSchema } from '../../../core/tank/index.ts'
import { contract, ROLES } from './contract.ts'

export const readCapacityTable = contract({
  name: 'read-capacity-table', roles: ROLES, ledger: 'none', file: 'file',
  says: 'A calibration company\'s CSV → a checked capacity table',
  input: z.strictObject({ name: z.string().max(200).optional(), file: z.base64() }),
  output: capacityTableSchema,
})
