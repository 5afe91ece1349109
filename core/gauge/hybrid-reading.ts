import { z } from 'zod'

const written = z.string().min(1).max(64)

/** A pressure and the height of its sensor above datum. */
const sensorSchema = z.strictObject({ height: written, pressure: written })

/** One to three pressures beside a level gauge: near the bottom, in the middle, in the vapour. */
export const hybridSchema = z.strictObject({
  bottom: sensorSchema,
  middle: sensorSchema.optional(),
  /** Absent: the vapour is at atmosphere, as gauge pressures count it. */
  top: sensorSchema.optional(),
  /** Local acceleration of free fall, `9.80665 m/s2`. */
  gravity: written,
  /** Density of the vapour above the liquid, `1.2 kg/m3`. */
  vapourDensity: written,
})
export type HybridReading = Readonly<z.infer<typeof hybridSchema>>
