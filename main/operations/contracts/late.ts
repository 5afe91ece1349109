import { z } from 'zod'

/**
 * Marks what concerns a closed period: it is booked in an open one. What is left out is filled in: the closed period that
 * it concerns, and now, or the end of the last open period.
 */
export const late = z.strictObject({
  period: z.string().max(40).optional(),
  bookedAt: z.string().optional(),
  /** Entry that it corrects. */
  corrects: z.number().int().positive().optional(),
}).optional()
