import { z } from 'zod'

const written = z.string().min(1).max(64)

/**
 * What was read at one tank at one moment, as the person wrote it. Measured values are text with their unit, kept for
 * ever; parsing happens in {@link readSnapshot}.
 */
export const gaugeSnapshotSchema = z.strictObject({
  tank: z.string(),
  product: z.string(),
  /** UTC instant, RFC 3339: `2026-03-14T06:10:00Z`. */
  at: z.string(),
  /** Who read it. */
  by: z.string().min(1).max(80),
  /** Exactly one of the two: `{ innage: "12.345 m" }` or `{ ullage, observedReferenceHeight }`. */
  level: z.union([
    z.strictObject({ innage: written }),
    z.strictObject({ ullage: written, observedReferenceHeight: written.optional() }),
  ]),
  /** Free-water cut above datum: `0 mm`; absent is not zero: leave out only when not measured. */
  waterCut: written,
  temperatures: z.strictObject({
    liquid: written,
    ambient: written.optional(),
    /** Spots top to bottom with their level above datum, for the tank's picture and the average. */
    spots: z.array(z.strictObject({ level: written, temperature: written })).max(40).optional(),
  }),
  /** Pressure above the liquid, when the vapour space is not at atmosphere. */
  pressure: written.optional(),
  density: z.strictObject({
    value: written,
    /** Absent: the value is at base conditions. */
    temperature: written.optional(),
    pressure: written.optional(),
    instrument: z.enum(['hydrometer', 'density-meter', 'base']),
  }),
  sedimentAndWater: written,
  remarks: z.string().max(500).optional(),
})
export type GaugeSnapshot = Readonly<z.infer<typeof gaugeSnapshotSchema>>
