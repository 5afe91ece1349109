import { z } from 'zod'
import { contract, ROLES } from './contract.ts'

const checkSchema = z.strictObject({ check: z.string(), holds: z.boolean(), detail: z.string() })

export const verifyDocument = contract({
  name: 'verify-document', roles: ROLES, ledger: 'none', file: 'file', verdict: 'valid',
  says: 'A ticket PDF → its signatures, embedded data, and a recomputation of every number',
  input: z.strictObject({ name: z.string().max(200).optional(), file: z.base64() }),
  output: z.strictObject({
    valid: z.boolean(),
    number: z.string(),
    signatures: z.array(z.strictObject({ name: z.string(), party: z.string(), certificate: z.string(), signedAt: z.string(), valid: z.boolean() })),
    checks: z.array(checkSchema),
    /** Place in the ledger that was open, when there was one. */
    ledgerPosition: z.string(),
  }),
})
