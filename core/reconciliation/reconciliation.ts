import { z } from 'zod'
import { terminalSchema } from '../ticket/index.ts'
import { quantitySchema } from '../worksheet/index.ts'
import { reportedPeriodSchema } from './late-lines.ts'
import { lossGainSchema } from './loss-gain.ts'

/**
 * The change between two successive gauges of one tank with no booked movement between them: what nobody booked.
 * The sum of all steps of a period is the period's loss or gain.
 */
export const unbookedStepSchema = z.strictObject({
  from: z.string(), to: z.string(),
  /** What was gauged: `inventory`, `opening of CPT-000012`, `closing of CPT-000012`. */
  fromWhat: z.string(), toWhat: z.string(),
  change: quantitySchema,
  /** Change over the time between the gauges, per day, for display; null for gauges less than an hour apart. */
  perDay: quantitySchema.nullable(),
  /** Sum of the changes up to here. */
  cumulative: quantitySchema,
})
export type UnbookedStep = Readonly<z.infer<typeof unbookedStepSchema>>

export const tankReconciliationSchema = z.strictObject({
  tank: z.string(), product: z.string(), productName: z.string(),
  openingAt: z.string(), closingAt: z.string(),
  receiptTickets: z.array(z.string()), deliveryTickets: z.array(z.string()),
  /** Movements from and to other tanks or names, each as it was booked. */
  transfers: z.array(z.strictObject({ seq: z.number().int(), kind: z.string(), number: z.string(), at: z.string(), nsv: quantitySchema })),
  result: lossGainSchema,
  steps: z.array(unbookedStepSchema),
})
export type TankReconciliation = Readonly<z.infer<typeof tankReconciliationSchema>>

export const productReconciliationSchema = z.strictObject({
  product: z.string(), productName: z.string(), tanks: z.array(z.string()), result: lossGainSchema,
})

const stepCountSchema = z.strictObject({ thatWay: z.number().int().nonnegative(), of: z.number().int().nonnegative() })

/** A pair of tanks of one product whose unbooked changes are opposite and alike: product that moved between them. */
export const oppositePairSchema = z.strictObject({
  loses: z.string(), gains: z.string(), product: z.string(), loss: quantitySchema, gain: quantitySchema,
  /** How many unbooked steps of each tank went its way, of all of them. */
  losingSteps: stepCountSchema.optional(), gainingSteps: stepCountSchema.optional(),
})
export type OppositePair = Readonly<z.infer<typeof oppositePairSchema>>

export const reconciliationSchema = z.strictObject({
  schema: z.literal('dipledger-reconciliation-1'),
  terminal: terminalSchema,
  from: z.string(), to: z.string(),
  tanks: z.array(tankReconciliationSchema),
  products: z.array(productReconciliationSchema),
  oppositePairs: z.array(oppositePairSchema),
  /** Tanks that could not be reconciled, and why. */
  missing: z.array(z.strictObject({
    tank: z.string(),
    /** The one of its names that could not be, where the tank stood under several. */
    product: z.string().optional(),
    message: z.string(),
  })),
  /** The period of these very ends, where one was opened. */
  period: reportedPeriodSchema.optional(),
  ledger: z.strictObject({ seq: z.number().int().nonnegative(), head: z.string() }),
})
export type Reconciliation = Readonly<z.infer<typeof reconciliationSchema>>
