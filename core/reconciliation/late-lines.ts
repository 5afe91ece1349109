import { z } from 'zod'
import { quantitySchema } from '../worksheet/index.ts'

/** A late correction, as a period, a ticket and the report list it. */
export const lateLineSchema = z.strictObject({
  seq: z.number(), kind: z.string(), number: z.string(), place: z.enum(['tank', 'line']), code: z.string(), product: z.string(),
  /** Signed change of the book. */
  nsv: quantitySchema,
  openedAt: z.string(), closedAt: z.string(), bookedAt: z.string(),
  /** The closed period that it concerns. */
  concerns: z.string(),
  /** The entry that it corrects, and the number of its ticket; empty for any other. */
  corrects: z.strictObject({ seq: z.number(), number: z.string() }).nullable(),
})
export type LateLine = Readonly<z.infer<typeof lateLineSchema>>

/** The period whose ends a reconciliation has: how it was closed, and late corrections both ways. */
export const reportedPeriodSchema = z.strictObject({
  name: z.string(),
  closed: z.strictObject({ entry: z.number(), at: z.string(), by: z.string(), signedBy: z.string(), sealHash: z.string(), head: z.strictObject({ seq: z.number(), hash: z.string() }) }).nullable(),
  /** Late corrections booked in this period, and those that concern it and are booked in later ones. */
  booked: z.array(lateLineSchema), concerning: z.array(lateLineSchema),
})
export type ReportedPeriod = Readonly<z.infer<typeof reportedPeriodSchema>>
