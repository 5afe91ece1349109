import { z } from 'zod'
import { pickedFromLogSchema } from './gauge-log.ts'
import { snapshotProbeSchema } from './probe.ts'
import { hybridSchema } from './hybrid-reading.ts'
import { instrumentSchema } from './instrument.ts'
import { densitySchema, samplesSchema } from './sample-list.ts'
import { levelSchema, tapeSchema } from './tape.ts'

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
  /** `{ innage: "12.345 m" }`, `{ ullage, observedReferenceHeight }`, or repeated readings `{ by, readings }`. */
  level: levelSchema,
  /** Free-water cut above datum: `0 mm`; absent is not zero: left out only where the water was entered as a volume. */
  waterCut: written.optional(),
  /** How the water cut was found; absent: by gauge. */
  waterBy: z.enum(['gauge', 'probe', 'entered']).optional(),
  /** Free water entered as a volume instead of a cut, and where the figure is from: `{ volume: "12.3 m3", origin: "drain tank D-2" }`. */
  waterVolume: z.strictObject({ volume: written, origin: z.string().min(1).max(200) }).optional(),
  temperatures: z.strictObject({
    /** Left out where it is made from the spots. */
    liquid: written.optional(),
    ambient: written.optional(),
    /** Spots top to bottom with their level above datum, for the tank's picture and the average. */
    spots: z.array(z.strictObject({ level: written, temperature: written })).max(40).optional(),
    /** How the spots make the liquid temperature: each layer by its volume, or the plain mean where the contract says so. */
    average: z.enum(['by-volume', 'plain']).optional(),
  }),
  /** Pressure above the liquid, when the vapour space is not at atmosphere. */
  pressure: written.optional(),
  /**
   * The vapour above a light hydrocarbon in a pressure vessel, counted as liquid: its temperature, and Z where the parties
   * agreed on one. Its pressure is `pressure`.
   */
  vapour: z.strictObject({ temperature: written, compressibility: written.optional() }).optional(),
  /** Left out where it is made from samples, or from the head of the liquid. */
  density: densitySchema.optional(),
  /** Left out where it is made from samples. */
  sedimentAndWater: written.optional(),
  /** Samples that density and S&W are from. */
  samples: samplesSchema.optional(),
  /** The tape that was used, and how its readings are corrected and accepted. */
  tape: tapeSchema.optional(),
  /** What read the level, where it was not a tape in a hand. */
  instrument: instrumentSchema.optional(),
  /** Pressures beside the level: density from head. */
  hybrid: hybridSchema.optional(),
  /** Snow, rain water or other load on the floating roof: `3500 kg`. */
  roofLoad: written.optional(),
  /** Why a gauge inside the critical zone of the roof is booked all the same; printed on the ticket. */
  criticalZoneReason: z.string().min(1).max(300).optional(),
  remarks: z.string().max(500).optional(),
  /** The hydrostatic probe's own reading, from which level, temperature and density follow. */
  probe: snapshotProbeSchema.optional(),
  /** Where in a gauge log it was picked. */
  log: pickedFromLogSchema.optional(),
})
export type GaugeSnapshot = Readonly<z.infer<typeof gaugeSnapshotSchema>>
