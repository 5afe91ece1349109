import { z } from 'zod'
import { reconciliationSchema } from '../../../core/reconciliation/index.ts'
import { contract, ROLES } from './contract.ts'

const period = z.strictObject({ from: z.string(), to: z.string() })

export const reconcile = contract({
  name: 'reconcile', roles: ROLES, ledger: 'reads',
  says: 'Book against measured inventory over a period, per tank and product',
  input: period, output: reconciliationSchema,
})

export const reconciliationDocument = contract({
  name: 'reconciliation-document', roles: ROLES, ledger: 'reads',
  says: 'The reconciliation of a period as PDF or CSV',
  input: period.extend({ format: z.enum(['pdf', 'csv']) }),
  output: z.strictObject({ name: z.string(), type: z.enum(['application/pdf', 'text/csv']), file: z.base64() }),
})
