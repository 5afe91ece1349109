import { z } from 'zod'
import { capacityTableSchema } from '../tank/index.ts'
import { exceptionSchema, quantitySchema, worksheetLineSchema } from '../worksheet/index.ts'

const written = z.string().min(1).max(64)

/** One module of the probe: its height, what it reads, and what it was off at its last zero check. */
export const probeModuleSchema = z.strictObject({
  name: z.string().regex(/^[A-Za-z0-9][A-Za-z0-9-]{0,11}$/),
  /** Height above the probe's own zero: above datum, unless `datumOffset` says otherwise. */
  height: written,
  /** Gauge pressure, `84.315 kPa`. */
  pressure: written,
  temperature: written,
  /** What was found at its last zero check and is taken off its pressure; absent: it was never set. */
  offset: written.optional(),
})

/** What a hydrostatic probe showed at one moment: 3 to 12 modules in one vertical pipe, lowest first; the highest stands in the vapour. */
export const probeReadingSchema = z.strictObject({
  modules: z.array(probeModuleSchema).min(3).max(12),
  /** Height of the probe's zero above the tank's datum, `35 mm`; absent: heights are above datum. */
  datumOffset: written.optional(),
  /** Local acceleration of free fall, `9.80665 m/s2`. */
  gravity: written,
  /** Density of the vapour above the liquid, `1.2 kg/m3`. */
  vapourDensity: written,
  /** Density of the air outside, where each module is vented to it at its own height; absent: one vent for all. */
  airDensity: written.optional(),
  /** A bottom stratum heavier than this holds free water, `985 kg/m3`. */
  waterThreshold: written.optional(),
  /** Density of the free water, to find its top inside a stratum; needs the threshold. */
  waterDensity: written.optional(),
  /** Density of the dry product at the tank's temperature, for entrained water. */
  dryDensity: written.optional(),
  /** How the shell bulges: share of its area per pressure of head, and for which density the capacity table allows it already. */
  bulging: z.strictObject({ coefficient: written, tableDensity: written.optional() }).optional(),
  /** Mass of a floating roof that the capacity table does not deduct. */
  roofMass: written.optional(),
  /** Standard uncertainty of one pressure, `0.010 kPa`. */
  pressureUncertainty: written,
  /** How much an emerged module may differ from the vapour module, `0.030 kPa`. */
  zeroLimit: written,
})
export type WrittenProbe = Readonly<z.infer<typeof probeReadingSchema>>

/** A probe's reading as a snapshot keeps it: with the sample that sediment and water is from. */
export const snapshotProbeSchema = probeReadingSchema.extend({
  /** Number of the sample: `S-0914-2, middle`. */
  sample: written.optional(),
})

export const probeInputSchema = probeReadingSchema.extend({ capacityTable: capacityTableSchema })
export type ProbeInput = Readonly<z.infer<typeof probeInputSchema>>

export const probeProfileSchema = z.strictObject({
  /** Bottom to top. */
  strata: z.array(z.strictObject({ from: quantitySchema, to: quantitySchema, density: quantitySchema, temperature: quantitySchema, volume: quantitySchema, mass: quantitySchema, water: z.boolean() })),
  /** The modules that are covered and those that are not, lowest first, at their heights above datum. */
  modules: z.array(z.strictObject({ name: z.string(), height: quantitySchema, temperature: quantitySchema, covered: z.boolean() })),
  level: quantitySchema,
  /** Top of the free water above datum; null when none was found. */
  waterLevel: quantitySchema.nullable(),
  averageTemperature: quantitySchema,
  averageDensity: quantitySchema,
  /** Of the product alone, without the free water; null when there is no product. */
  productTemperature: quantitySchema.nullable(),
  productDensity: quantitySchema.nullable(),
  /** Through the table, stratum by stratum. */
  massFromTable: quantitySchema,
  /** Head pressure over the area that the table gives. */
  massFromHead: quantitySchema,
  volumeFromTable: quantitySchema,
  volumeFromMass: quantitySchema,
  volumeDifference: quantitySchema,
  /** What the difference is made of, in words and figures; the parts add up to it before rounding. */
  differenceExplained: z.array(z.strictObject({ cause: z.enum(['area', 'rounding', 'bulging']), volume: quantitySchema, says: z.string() })),
  levelUncertainty: quantitySchema,
  /** Expanded, k = 2, from the pressures alone. */
  uncertainties: z.strictObject({ level: quantitySchema, waterLevel: quantitySchema.nullable(), massFromTable: quantitySchema, massFromHead: quantitySchema, averageDensity: quantitySchema }),
  /** The limit on mass of OIML R 125 beside the uncertainty. */
  massLimit: z.strictObject({ limit: quantitySchema, uncertainty: quantitySchema, within: z.boolean(), note: z.string() }),
  /** Share of water held in the product, with its uncertainty; null when the dry density was not given. Never booked without a sample. */
  entrainedWater: z.strictObject({ share: quantitySchema, uncertainty: quantitySchema, says: z.string() }).nullable(),
  zeroChecks: z.array(z.strictObject({
    module: z.string(),
    /** What the module is off, after the offset that was applied. */
    offset: quantitySchema,
    limit: quantitySchema, within: z.boolean(),
    /** Offset that was taken off its pressure, and the one that would bring it to zero. */
    applied: quantitySchema, next: quantitySchema,
  })),
  /** What was allowed, but must be printed. */
  exceptions: z.array(exceptionSchema),
  worksheet: z.array(worksheetLineSchema),
})
export type ProbeProfile = Readonly<z.infer<typeof probeProfileSchema>>
