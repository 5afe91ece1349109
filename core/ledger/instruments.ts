import { z } from 'zod'

export const INSTRUMENT_KINDS = ['automatic-level', 'hydrostatic-probe', 'hybrid', 'tape', 'thermometer', 'hydrometer', 'density-meter', 'pressure'] as const

/** An instrument that decides numbers, and how it stands. */
export const instrumentSchema = z.strictObject({
  code: z.string().min(1).max(40),
  kind: z.enum(INSTRUMENT_KINDS),
  /** Code of the tank it stands on; absent for one that is carried. */
  tank: z.string().optional(),
  serial: z.string().max(60).optional(),
  /** Expanded uncertainty (k = 2) as its certificate says, with its unit: `1.0 mm`. */
  expandedUncertainty: z.string().max(40).optional(),
  certificate: z.string().max(80).optional(),
  /** It is due to be verified again after so many days. */
  verifyEveryDays: z.number().int().min(1).max(3660).optional(),
  inService: z.boolean(),
  remarks: z.string().max(300).optional(),
})
export type Instrument = Readonly<z.infer<typeof instrumentSchema>>

export const GAUGE_EVENTS = ['alarm', 'alarm-cleared', 'fault', 'fault-cleared', 'setting-changed', 'note'] as const

/** An alarm or event of a gauge, as it said or as somebody saw it. */
export const gaugeEventSchema = z.strictObject({
  tank: z.string(),
  gauge: z.string().min(1).max(40).optional(),
  at: z.string(),
  event: z.enum(GAUGE_EVENTS),
  message: z.string().min(1).max(300),
  source: z.enum(['hand', 'log']),
})
export type GaugeEvent = Readonly<z.infer<typeof gaugeEventSchema>>
