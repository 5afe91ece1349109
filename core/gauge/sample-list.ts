import { z } from 'zod'

const written = z.string().min(1).max(64)

/** Where a sample is from: the middle of a third of the liquid, or drawn while the bottle runs through it all. */
export const SAMPLE_PLACES = ['upper', 'middle', 'lower', 'running'] as const

/** One sample: where it is from, and what the laboratory read. */
export const sampleSchema = z.strictObject({
  from: z.enum(SAMPLE_PLACES),
  /** Number on the bottle. */
  number: z.string().min(1).max(40),
  /** When it was drawn, a UTC instant. */
  at: z.string(),
  density: z.strictObject({
    value: written,
    temperature: written.optional(),
    pressure: written.optional(),
    instrument: z.enum(['hydrometer', 'density-meter', 'base']),
  }),
  sedimentAndWater: written,
})
export type Sample = Readonly<z.infer<typeof sampleSchema>>

export const samplesSchema = z.array(sampleSchema).min(1).max(9)
