import { z } from 'zod'

const written = z.string().min(1).max(64)

/** Where a sample is from: the middle of a third of the liquid, or drawn while the bottle runs through it all. */
export const SAMPLE_PLACES = ['upper', 'middle', 'lower', 'running'] as const
export type SamplePlace = (typeof SAMPLE_PLACES)[number]

/** A density as it was observed. */
export const densitySchema = z.strictObject({
  value: written,
  /** Absent: the value is at base conditions. */
  temperature: written.optional(),
  pressure: written.optional(),
  instrument: z.enum(['hydrometer', 'density-meter', 'base', 'probe']),
})
export type WrittenDensity = Readonly<z.infer<typeof densitySchema>>

/** One sample: where it is from, and what the laboratory read. */
export const sampleSchema = z.strictObject({
  from: z.enum(SAMPLE_PLACES),
  /** Number on the bottle. */
  number: z.string().min(1).max(40),
  /** When it was drawn, a UTC instant. */
  at: z.string(),
  density: densitySchema.extend({ instrument: densitySchema.shape.instrument.exclude(['probe']) }),
  sedimentAndWater: written,
})
export type Sample = Readonly<z.infer<typeof sampleSchema>>

export const samplesSchema = z.array(sampleSchema).min(1).max(4)
