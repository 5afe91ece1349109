import { z } from 'zod'
import { quantitySchema, worksheetLineSchema } from '../worksheet/index.ts'

const written = z.string().min(1).max(64)

/** What a loss or gain is divided by; thresholds differ by it, so it is always stated. */
export const THROUGHPUT_BASES = ['deliveries', 'receipts', 'receipts-and-deliveries', 'opening-and-receipts'] as const
export type ThroughputBase = (typeof THROUGHPUT_BASES)[number]

/** A limit on loss or gain: a share of the throughput plus a fixed volume, and who set it. */
export const limitSchema = z.strictObject({
  percent: written,
  /** `130 gal`; `0 bbl` when there is none. */
  fixed: written,
  base: z.enum(THROUGHPUT_BASES),
  /** Contract or rule it comes from. */
  source: z.string().min(1).max(120),
})
export type Limit = Readonly<z.infer<typeof limitSchema>>

/** Net standard volumes of one period, each as written. */
export const lossGainInputSchema = z.strictObject({
  unit: z.enum(['m3', 'L', 'bbl', 'gal']),
  opening: written,
  receipts: z.array(written).max(10_000),
  deliveries: z.array(written).max(10_000),
  /** From and to other tanks of the terminal; absent: none. */
  transfersIn: z.array(written).max(10_000).optional(),
  transfersOut: z.array(written).max(10_000).optional(),
  /** Signed. */
  adjustments: z.array(written).max(10_000),
  closing: written,
  limit: limitSchema,
  /** Expanded uncertainty (k = 2) of measured closing minus book closing, when it is known. */
  expandedUncertainty: written.optional(),
})
export type LossGainInput = Readonly<z.infer<typeof lossGainInputSchema>>

export const lossGainSchema = z.strictObject({
  opening: quantitySchema,
  receipts: quantitySchema,
  deliveries: quantitySchema,
  transfersIn: quantitySchema,
  transfersOut: quantitySchema,
  adjustments: quantitySchema,
  bookClosing: quantitySchema,
  measuredClosing: quantitySchema,
  /** Measured − book: a loss is negative. */
  lossGain: quantitySchema,
  throughput: quantitySchema,
  throughputBase: z.enum(THROUGHPUT_BASES),
  /** Of the throughput; null when there was none. */
  percent: z.string().nullable(),
  limit: quantitySchema,
  limitSource: z.string(),
  verdict: z.enum(['within-limit', 'loss-outside-limit', 'gain-outside-limit']),
  /** Whether the loss or gain is larger than its expanded uncertainty; null when that was not given. */
  significance: z.strictObject({ expandedUncertainty: quantitySchema, significant: z.boolean() }).nullable(),
  worksheet: z.array(worksheetLineSchema),
})
export type LossGain = Readonly<z.infer<typeof lossGainSchema>>
