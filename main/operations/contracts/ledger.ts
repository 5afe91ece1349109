import { z } from 'zod'
import { softwareSchema } from '../../../core/ticket/index.ts'
import { contract, ROLES } from './contract.ts'

export const verifyLedger = contract({
  name: 'verify-ledger', roles: ROLES, nobody: true, ledger: 'reads', verdict: 'whole',
  says: 'Check every entry, document and projection, and make whatever was computed again, the checks of seals too; the first difference first',
  input: z.strictObject({
    /** Open every document as well, as verify-documents does. */
    documents: z.boolean().optional(),
  }),
  output: z.strictObject({
    whole: z.boolean(), entries: z.number(), tickets: z.number(),
    /** How many entries were computed again from the ledger alone. */
    recomputed: z.number(),
    /** How many documents were opened; 0 unless that was asked for. */
    documents: z.number(),
    head: z.string(),
    differences: z.array(z.strictObject({ where: z.string(), what: z.string() })),
    /** What stands as it was posted and is worth a look, as an entry dated before the one that it follows. */
    noticed: z.array(z.strictObject({ where: z.string(), what: z.string() })),
  }),
})
export const listEntries = contract({
  name: 'list-entries', roles: ROLES, ledger: 'reads', says: 'Ledger entries, newest first',
  input: z.strictObject({ before: z.number().int().optional(), limit: z.number().int().min(1).max(500).optional() }),
  output: z.strictObject({
    entries: z.array(z.strictObject({ seq: z.number(), kind: z.string(), at: z.string(), by: z.string(), summary: z.string(), hash: z.string() })), more: z.boolean(),
  }),
})
export const about = contract({
  name: 'about', roles: ROLES, ledger: 'none', says: 'Which software this is: version and hash of the core that computes',
  input: z.strictObject({}),
  output: z.strictObject({ software: softwareSchema, sources: z.array(z.strictObject({ key: z.string(), title: z.string(), edition: z.string() })) }),
})
