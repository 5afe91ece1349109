import { z } from 'zod'
import { closingCheckSchema, periodSchema, sealFileSchema, sealSchema, sealSignatureSchema } from '../../../core/ledger/index.ts'
import { lateLineSchema } from '../../../core/reconciliation/index.ts'
import { by, contract, ROLES } from './contract.ts'

const name = z.string().max(40)

const standingSchema = periodSchema.extend({
  /** The entry that opened it. */
  seq: z.number(),
  closed: z.strictObject({
    seq: z.number(), at: z.string(), by: z.string(),
    /** SHA-256 of the seal's canonical JSON. */
    sealHash: z.string(),
    /** Checks that did not hold and were signed off. */
    signedOff: z.number(),
  }).nullable(),
})

export const listPeriods = contract({
  name: 'periods', roles: ROLES, ledger: 'reads', says: 'Periods in order of time, and what the next one would be',
  input: z.strictObject({}),
  output: z.strictObject({
    periods: z.array(standingSchema),
    /** The next calendar month at the terminal's gauge hour, from where the last period ends; the first one that of the first movement. */
    next: periodSchema.nullable(),
    /** When a late correction counts if nothing else is said; null while no period is open. */
    bookedAt: z.string().nullable(),
  }),
})

export const openPeriod = contract({
  name: 'open-period', roles: ['accountant', 'administrator'], ledger: 'writes', says: 'Open the next period; from the first one on whatever is booked must lie in an open period',
  input: z.strictObject({ name: name.optional(), from: z.string().optional(), to: z.string().optional(), by }),
  output: z.strictObject({ seq: z.number(), hash: z.string(), period: periodSchema }),
})

export const closingChecks = contract({
  name: 'closing-checks', roles: ROLES, ledger: 'reads', says: 'What is checked before a period is closed, and whether it holds now',
  input: z.strictObject({ period: name }),
  output: z.strictObject({
    period: periodSchema,
    /** Whether the period has ended, so that it may be closed. */
    ended: z.boolean(),
    checks: z.array(closingCheckSchema.omit({ signedOff: true }).extend({ maySignOff: z.boolean() })),
  }),
})

export const closePeriod = contract({
  name: 'close-period', roles: ['accountant'], approval: true, ledger: 'writes', says: 'Close a period for good and sign its seal; what does not hold is signed off with a reason',
  input: z.strictObject({
    period: name,
    signOffs: z.array(z.strictObject({ check: z.string().max(120), reason: z.string().max(500) })).max(500).optional(),
    /** Who signs the seal; for a proposal they are given when it is approved. */
    identity: z.string().optional(), passphrase: z.string().max(200).optional(), by,
  }),
  output: z.strictObject({ seq: z.number(), hash: z.string(), seal: sealSchema, sealHash: z.string() }),
})

export const readPeriod = contract({
  name: 'read-period', roles: ROLES, ledger: 'reads', says: 'One period: its seal where it is closed, and the late corrections that concern it or are booked in it',
  input: z.strictObject({ period: name }),
  output: z.strictObject({
    period: standingSchema, seal: sealSchema.nullable(), signature: sealSignatureSchema.nullable(), signedBy: z.string().nullable(),
    concerning: z.array(lateLineSchema), booked: z.array(lateLineSchema),
  }),
})

export const readBalances = contract({
  name: 'balances', roles: ROLES, ledger: 'reads', says: 'The book per tank or line and product, and per owner, at an instant or at the end of a period',
  input: z.strictObject({ at: z.string().optional(), period: name.optional() }),
  output: z.strictObject({
    at: z.string(), balances: sealSchema.shape.balances, owners: sealSchema.shape.owners,
    /** The seal that they go on from, and how many changes were added to it. */
    since: z.strictObject({ period: z.string(), entry: z.number() }).nullable(), changes: z.number(),
  }),
})

export const verifySeal = contract({
  name: 'verify-seal', roles: ROLES, ledger: 'none', file: 'file', verdict: 'valid',
  says: 'Check a seal: its signature, and with its ledger open its head, counts and balances, worked out again from the entries',
  /** The name of a period, a seal as a file, or a seal as `seal-document` writes it. */
  input: sealFileSchema.partial().extend({ period: name.optional(), file: z.base64().optional() }),
  output: z.strictObject({ valid: z.boolean(), period: z.string(), sealHash: z.string(), checks: z.array(z.strictObject({ check: z.string(), holds: z.boolean(), detail: z.string() })) }),
})

export const sealDocument = contract({
  name: 'seal-document', roles: ROLES, ledger: 'reads', says: 'The seal of a closed period to take away: as JSON with its signature, or as a page',
  input: z.strictObject({ period: name, format: z.enum(['json', 'pdf']) }),
  output: z.strictObject({ name: z.string(), type: z.enum(['application/json', 'application/pdf']), file: z.base64() }),
})
