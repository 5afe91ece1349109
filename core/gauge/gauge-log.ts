import { z } from 'zod'

const written = z.string().min(1).max(64)

export const LOG_STATUSES = ['ok', 'alarm', 'fault'] as const

/** One line of a gauge log: what the instruments of one tank showed at one moment, as it was written. */
export const loggedLineSchema = z.strictObject({
  /** Line of the file, from 1. */
  line: z.number().int().positive(),
  /** UTC instant. */
  at: z.string(),
  tank: z.string().min(1).max(40),
  /** Name of the gauge: `LT-301`. */
  gauge: z.string().min(1).max(40).optional(),
  level: written.optional(),
  waterCut: written.optional(),
  temperature: written.optional(),
  ambient: written.optional(),
  /** Pressure above the liquid. */
  pressure: written.optional(),
  density: written.optional(),
  densityTemperature: written.optional(),
  /** What the instrument said of itself; a fault is shown and never picked. */
  status: z.enum(LOG_STATUSES).optional(),
  /** What it said with its status: `high level`. */
  message: z.string().min(1).max(200).optional(),
  /** Modules of a hydrostatic probe, lowest first. */
  modules: z.array(z.strictObject({ pressure: written, temperature: written })).min(3).max(12).optional(),
})
export type LoggedLine = Readonly<z.infer<typeof loggedLineSchema>>

/** A gauge log as its file says it, in the order of its lines. */
export const gaugeLogSchema = z.strictObject({ file: z.string().max(200), lines: z.array(loggedLineSchema).min(1).max(20_000) })
export type GaugeLog = Readonly<z.infer<typeof gaugeLogSchema>>

/** Where in a log a snapshot was picked, with the levels before it, by which it is judged whether the tank was still. */
export const pickedFromLogSchema = z.strictObject({
  file: z.string().max(200),
  line: z.number().int().positive(),
  /** Oldest first; the last is the snapshot's own. */
  levels: z.array(z.strictObject({ at: z.string(), level: written })).min(1).max(500),
})
export type PickedFromLog = Readonly<z.infer<typeof pickedFromLogSchema>>
