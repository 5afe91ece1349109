import { z } from 'zod'
import { standingVerificationSchema } from '../../../core/gauge/index.ts'
import { identitySchema, productLimitSchema } from '../../../core/ledger/index.ts'
import { productSchema, staticQuantitySchema } from '../../../core/quantity/index.ts'
import { tankSchema } from '../../../core/tank/index.ts'
import { partySchema, terminalSchema } from '../../../core/ticket/index.ts'
import { contract, ROLES } from './contract.ts'

/** The last gauge of a tank, from an inventory or a ticket. */
export const lastGaugeSchema = z.strictObject({
  tank: z.string(), product: z.string(), at: z.string(), what: z.string(),
  /** Levels above datum in millimetres, for the picture. */
  levelMm: z.string(), waterMm: z.string(), temperature: z.string(), quantity: staticQuantitySchema,
})

export const terminal = contract({
  name: 'terminal', roles: ROLES, ledger: 'reads',
  says: 'The terminal as it stands now: tanks, products, parties, identities, limits, last gauges',
  input: z.strictObject({}),
  output: z.strictObject({
    terminal: terminalSchema.nullable(),
    tanks: z.array(tankSchema), products: z.array(productSchema), parties: z.array(partySchema),
    identities: z.array(identitySchema.extend({ hasKey: z.boolean() })),
    limits: z.array(productLimitSchema), lastGauges: z.array(lastGaugeSchema),
    /** Verifications of automatic gauges, in the order in which they were entered. */
    verifications: z.array(standingVerificationSchema),
    head: z.strictObject({ seq: z.number(), hash: z.string() }), nextNumber: z.string(),
  }),
})
