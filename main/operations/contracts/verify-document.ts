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

export const verifyDocuments = contract({
  name: 'verify-documents', roles: ROLES, nobody: true, ledger: 'reads', verdict: 'whole',
  says: 'Open every ticket document in the ledger: signatures, data equal to the booked ticket, numbers, and the pages drawn again',
  input: z.strictObject({
    /** First and last ticket; all where they are not named. */
    from: z.string().max(40).optional(), to: z.string().max(40).optional(),
  }),
  output: z.strictObject({ whole: z.boolean(), documents: z.number(), differences: z.array(z.strictObject({ where: z.string(), what: z.string() })) }),
})
