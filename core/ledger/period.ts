import { z } from 'zod'
import { quantitySchema } from '../worksheet/index.ts'

const hash = z.string().regex(/^[0-9a-f]{64}$/)
const count = z.number().int().nonnegative()

/** A span of time whose book is closed as a whole: after `from`, up to and with `to`. */
export const periodSchema = z.strictObject({
  /** `2026-09`. */
  name: z.string().regex(/^[A-Za-z0-9][A-Za-z0-9 ._-]{0,39}$/),
  from: z.string(), to: z.string(),
})
export type Period = Readonly<z.infer<typeof periodSchema>>

/** A check before closing; what does not hold is signed off with a reason, or the period stays open. */
export const closingCheckSchema = z.strictObject({
  check: z.string().max(120), holds: z.boolean(), detail: z.string().max(1000),
  signedOff: z.strictObject({ by: z.string().min(1).max(80), reason: z.string().min(1).max(500) }).optional(),
})
export type ClosingCheck = Readonly<z.infer<typeof closingCheckSchema>>

/** Book of one product in one place, and of one owner in it, at the end of a period. */
export const sealedBalanceSchema = z.strictObject({ code: z.string(), product: z.string(), nsv: quantitySchema })
export const sealedOwnerSchema = sealedBalanceSchema.extend({ party: z.string() })

/** What a closed period comes to. */
export const sealSchema = z.strictObject({
  schema: z.literal('dipledger-seal-1'),
  period: periodSchema,
  closedAt: z.string(), closedBy: z.string().min(1).max(80),
  /** The ledger's head before the closing entry. */
  head: z.strictObject({ seq: count, hash }),
  counts: z.strictObject({ entries: count, tickets: count, voided: count, inventories: count, adjustments: count, stockMovements: count, lateCorrections: count }),
  balances: z.array(sealedBalanceSchema),
  owners: z.array(sealedOwnerSchema),
  checks: z.array(closingCheckSchema),
})
export type Seal = Readonly<z.infer<typeof sealSchema>>

/** A detached signature (CMS, base64 DER) over the canonical JSON of the seal. */
export const sealSignatureSchema = z.strictObject({ identity: z.string(), certificate: hash, cms: z.string() })
export type SealSignature = Readonly<z.infer<typeof sealSignatureSchema>>
