import { z } from 'zod'
import { contract, ROLES } from './contract.ts'

export const tankVersions = contract({
  name: 'tank-versions', roles: ROLES, ledger: 'reads',
  says: 'Every version of a tank with its effective date and the capacity table it counts by, the newest first',
  input: z.strictObject({ tank: z.string() }),
  output: z.strictObject({
    versions: z.array(z.strictObject({
      seq: z.number(), enteredAt: z.string(), by: z.string(), effectiveFrom: z.string(), state: z.enum(['now', 'later', 'before']),
      certificate: z.string(), issuedBy: z.string(), issuedOn: z.string(), revision: z.string().optional(), rows: z.number(),
    })),
  }),
})
