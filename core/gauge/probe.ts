import { z } from 'zod'
import { capacityTableSchema } from '../tank/index.ts'
import { quantitySchema, worksheetLineSchema } from '../worksheet/index.ts'

const written = z.string().min(1).max(64)

/** One module of the probe: its height above datum, and what it reads. */
const moduleSchema = z.strictObject({
  name: z.string().min(1).max(20),
  height: written,
  /** Gauge pressure against the atmosphere, `84.315 kPa`. */
  pressure: written,
  temperature: written,
})

/**
 * A hydrostatic probe: 3 to 12 modules in one vertical pipe, lowest first; the highest always stands in the vapour.
 */
export const probeInputSchema = z.strictObject({
  modules: z.array(moduleSchema).min(3).max(12),
  /** Local acceleration of free fall, `9.80665 m/s2`. */
  gravity: written,
  /** Density of the vapour above the liquid, `1.2 kg/m3`. */
  vapourDensity: written,
  capacityTable: capacityTableSchema,
  /** Bottom stratum heavier than this is free water, `985 kg/m3`. */
  waterThreshold: written.optional(),
  /** Density of the dry product at the tank's temperature, for entrained water. */
  dryDensity: written.optional(),
  /** Standard uncertainty of one pressure, `0.010 kPa`. */
  pressureUncertainty: written,
  /** How much an emerged module may differ from the vapour module, `0.030 kPa`. */
  zeroLimit: written,
})
export type ProbeInput = Readonly<z.infer<typeof probeInputSchema>>

export const probeProfileSchema = z.strictObject({
  /** Bottom to top. */
  strata: z.array(z.strictObject({ from: quantitySchema, to: quantitySchema, density: quantitySchema, temperature: quantitySchema, water: z.boolean() })),
  level: quantitySchema,
  /** Top of the free water above datum; null when none was found. */
  waterLevel: quantitySchema.nullable(),
  averageTemperature: quantitySchema,
  averageDensity: quantitySchema,
  /** Through the table, stratum by stratum. */
  massFromTable: quantitySchema,
  /** Head pressure over the area that the table gives. */
  massFromHead: quantitySchema,
  volumeFromTable: quantitySchema,
  volumeFromMass: quantitySchema,
  volumeDifference: quantitySchema,
  levelUncertainty: quantitySchema,
  /** Share of water held in the product, with its uncertainty; null when the dry density was not given. Never booked without a sample. */
  entrainedWater: z.strictObject({ share: quantitySchema, uncertainty: quantitySchema }).nullable(),
  zeroChecks: z.array(z.strictObject({ module: z.string(), offset: quantitySchema, limit: quantitySchema, within: z.boolean() })),
  worksheet: z.array(worksheetLineSchema),
})
export type ProbeProfile = Readonly<z.infer<typeof probeProfileSchema>>
