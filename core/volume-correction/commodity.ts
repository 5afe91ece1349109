import { z } from 'zod'
import { quantitySchema, worksheetLineSchema } from '../worksheet/index.ts'

export const GROUPS = ['crude', 'refined', 'lube', 'special'] as const
/** Petroleum groups: A crude, B refined, D lubricating, C special applications by a given expansion factor. */
export type Group = (typeof GROUPS)[number]

export const COMMODITIES = [...GROUPS] as const
export type Commodity = (typeof COMMODITIES)[number]

export const BASE_TEMPERATURES = ['60 degF', '15 degC', '20 degC'] as const
export type BaseTemperature = (typeof BASE_TEMPERATURES)[number]

/** Editions of the volume-correction standard a product can name. */
export const EDITIONS = ['MPMS-11.1-2004'] as const
export type Edition = (typeof EDITIONS)[number]

const written = z.string().min(1).max(64)

export const densityInputSchema = z.strictObject({
  /** `31.4 degAPI`: a base density when no temperature is given, else as observed. */
  value: written,
  /** Temperature at which it was observed. */
  temperature: written.optional(),
  pressure: written.optional(),
  /** Read with a glass hydrometer, so that the glass correction applies. */
  hydrometer: z.boolean().optional(),
})
export type DensityInput = Readonly<z.infer<typeof densityInputSchema>>

export const volumeCorrectionInputSchema = z.strictObject({
  commodity: z.enum(COMMODITIES),
  /** For `special`: thermal expansion factor at 60 °F, `0.000510 /degF`. */
  alpha: written.optional(),
  density: densityInputSchema,
  baseTemperature: z.enum(BASE_TEMPERATURES),
  temperature: written,
  pressure: written.optional(),
})
export type VolumeCorrectionInput = Readonly<z.infer<typeof volumeCorrectionInputSchema>>

/** What the correction gives; `unrounded.baseDensity` in kg/m³. */
export const volumeCorrectionOutputSchema = z.strictObject({
  /** In the unit in which the density was written. */
  baseDensity: quantitySchema,
  ctl: z.string(),
  cpl: z.string(),
  ctpl: z.string(),
  unrounded: z.strictObject({ baseDensity: z.number(), ctl: z.number(), cpl: z.number(), ctpl: z.number() }),
  subgroup: z.string(),
  worksheet: z.array(worksheetLineSchema),
})
export type VolumeCorrectionOutput = Readonly<z.infer<typeof volumeCorrectionOutputSchema>>
