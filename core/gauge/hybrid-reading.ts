import { z } from 'zod'

const written = z.string().min(1).max(64)

/** A pressure against the atmosphere beside the sensor, and the height of the sensor above datum. */
const sensorSchema = z.strictObject({ height: written, pressure: written })

/** One to three pressures beside a level gauge: near the bottom, in the middle, in the vapour. */
export const hybridSchema = z.strictObject({
  bottom: sensorSchema,
  middle: sensorSchema.optional(),
  /** Absent: the vapour is open to the air. */
  top: sensorSchema.optional(),
  /** Local acceleration of free fall, `9.80665 m/s2`. */
  gravity: written,
  /** Density of the vapour between the surface and the top sensor, `1.2 kg/m3`; with `top` only. */
  vapourDensity: written.optional(),
  /** Density of the air outside, `1.2 kg/m3`; absent: the sensors share one reference to the air. */
  airDensity: written.optional(),
  /** How far the density from head may differ from that of the sample before it is printed, `1.0 kg/m3`. */
  limit: written.optional(),
})
export type HybridReading = Readonly<z.infer<typeof hybridSchema>>
