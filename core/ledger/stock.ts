import { z } from 'zod'
import { versionSchema } from '../ticket/index.ts'
import { STOCK_MOVEMENTS, stockLegResultSchema, type StockMovementKind } from '../transfer/index.ts'
import { exceptionSchema, quantitySchema, worksheetLineSchema } from '../worksheet/index.ts'

/** Marks what concerns a closed period and is booked in an open one. */
export const lateSchema = z.strictObject({
  /** Name of the closed period. */
  period: z.string(),
  /** Instant in an open period at which it counts in the book. */
  bookedAt: z.string(),
  /** The entry that it corrects. */
  corrects: z.number().int().positive().optional(),
})
export type Late = Readonly<z.infer<typeof lateSchema>>

export { STOCK_MOVEMENTS, type StockMovementKind }

/** What a stock movement does to one product in one tank or line, as it was computed, by the versions in the ledger. */
export const stockLegSchema = stockLegResultSchema.extend({
  /** Code of the tank or of the line. */
  code: z.string().min(1).max(40),
  product: versionSchema,
  /** The tank that was gauged; a line has none. */
  tank: versionSchema.optional(),
})
export type StockLeg = Readonly<z.infer<typeof stockLegSchema>>

/** Product that moved or changed its name inside the terminal. */
export const stockMovementSchema = z.strictObject({
  kind: z.enum(STOCK_MOVEMENTS),
  /** When it was complete. */
  at: z.string(),
  legs: z.array(stockLegSchema).min(1).max(12),
  /** Sum of all legs in one unit: what was lost or gained on the way. */
  difference: quantitySchema,
  /** Change of the tank that nobody booked, in a water draw-off. */
  unbooked: quantitySchema.optional(),
  /** Legs and difference line by line. */
  lines: z.array(worksheetLineSchema).optional(),
  exceptions: z.array(exceptionSchema).optional(),
  reason: z.string().min(1).max(500),
  reference: z.string().max(80).optional(),
})
export type StockMovement = Readonly<z.infer<typeof stockMovementSchema>>

/** Whose product it is: shares of a booked movement, or a change of owner in place when `of` is absent (then they add up to 0). */
export const stockAllocationSchema = z.strictObject({
  /** The entry whose change is shared out. */
  of: z.number().int().positive().optional(),
  tank: z.string(), product: z.string(), at: z.string(),
  shares: z.array(z.strictObject({ party: z.string(), nsv: quantitySchema })).min(1).max(20),
  reason: z.string().min(1).max(500),
})
export type StockAllocation = Readonly<z.infer<typeof stockAllocationSchema>>
