import { transferInputSchema, transferResultSchema } from '../../../core/transfer/index.ts'
import { contract, ROLES } from './contract.ts'

export const transferQuantity = contract({
  name: 'transfer-quantity', roles: ROLES, ledger: 'none',
  says: 'Opening and closing gauges → worksheets and the quantity moved',
  input: transferInputSchema, output: transferResultSchema,
})
