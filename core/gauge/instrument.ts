import { z } from 'zod'

/** What an automatic level gauge said of itself with its reading. */
export const GAUGE_STATUSES = ['ok', 'disturbed', 'alarm', 'out-of-service'] as const

/** An automatic level gauge that read level, and temperature if it can. */
const automaticSchema = z.strictObject({
  kind: z.literal('automatic'),
  /** Name of the gauge on the tank: `LT-101`. */
  id: z.string().min(1).max(40),
  status: z.enum(GAUGE_STATUSES),
})

export const instrumentSchema = z.discriminatedUnion('kind', [automaticSchema])
export type Instrument = Readonly<z.infer<typeof instrumentSchema>>
