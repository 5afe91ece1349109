import { z } from 'zod'
import type { SourceKey } from '../sources.ts'
import { productCurveSchema } from './product-curve-schema.ts'
import { quantitySchema, worksheetLineSchema } from '../worksheet/index.ts'

export const GROUPS = ['crude', 'refined', 'lube', 'special'] as const
/** Petroleum groups: A crude, B refined, D lubricating, C special applications by a given expansion factor. */
export type Group = (typeof GROUPS)[number]

export const COMMODITIES = [...GROUPS, 'lpg', 'chemical', 'ethanol', 'biodiesel', 'curve', 'water'] as const
export type Commodity = (typeof COMMODITIES)[number]

export const BASE_TEMPERATURES = ['60 degF', '15 degC', '20 degC'] as const
export type BaseTemperature = (typeof BASE_TEMPERATURES)[number]

/** Editions of the volume-correction standards that a product can name; which of them a commodity has, its family says. */
export const EDITIONS = [
  'MPMS-11.1-2004', 'MPMS-11.1-2019', 'ASTM-D1250-80', 'MPMS-11.2.4-2007',
  'ASTM-D1555', 'CFR40-80.1426', 'OIML-R22', 'EN-14214', 'LAB-CERTIFICATE', 'MPMS-11.4.1', 'MPMS-11.2.3', 'UNESCO-44',
] as const satisfies readonly SourceKey[]
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

/** What a product says beside its commodity; each setting only where its commodity asks for it. */
export const SETTINGS_SHAPE = {
  /** For `special`: thermal expansion factor at 60 °F, `0.000510 /degF`. */
  alpha: written.optional(),
  /** For `lpg`: molar mass of the vapour, `44.1 g/mol`. */
  molarMass: written.optional(),
  /** For `chemical`: the tabulated substance, `benzene`. */
  component: written.optional(),
  /** For `ethanol`: share of ethanol by mass, `99.5 %`. */
  content: written.optional(),
  /** For `water`: practical salinity, `35 PSU`. */
  salinity: written.optional(),
  /** For `curve`: density or VCF against temperature from a certificate, coldest first. */
  curve: productCurveSchema.optional(),
  /** For the tables of 1980: decimals of the factor, `four` as printed where nothing is said. */
  figures: z.enum(['four', 'five']).optional(),
} as const

export const volumeCorrectionInputSchema = z.strictObject({
  commodity: z.enum(COMMODITIES),
  /** The usual edition of the commodity where none is named. */
  edition: z.enum(EDITIONS).optional(),
  ...SETTINGS_SHAPE,
  /** May be left out only where the commodity knows its density itself. */
  density: densityInputSchema.optional(),
  baseTemperature: z.enum(BASE_TEMPERATURES),
  temperature: written,
  pressure: written.optional(),
  /** `none`: factors and base density with all their digits; `standard` where nothing is said. */
  rounding: z.enum(['standard', 'none']).optional(),
})
export type VolumeCorrectionInput = Readonly<z.infer<typeof volumeCorrectionInputSchema>>

const factorsSchema = z.strictObject({ ctl: z.string(), cpl: z.string(), ctpl: z.string() })

/** What the correction gives; `unrounded.baseDensity` in kg/m³. */
export const volumeCorrectionOutputSchema = z.strictObject({
  /** In the unit in which the density was written. */
  baseDensity: quantitySchema,
  ctl: z.string(),
  cpl: z.string(),
  ctpl: z.string(),
  unrounded: z.strictObject({ baseDensity: z.number(), ctl: z.number(), cpl: z.number(), ctpl: z.number() }),
  /**
   * Where the density was observed: factors there, and what a volume there becomes at the temperature and pressure of the
   * input, CTPL(observed) / CTPL. Null for a density at base conditions.
   */
  observed: factorsSchema.extend({ toAlternate: z.string(), unrounded: z.strictObject({ ctl: z.number(), cpl: z.number(), ctpl: z.number(), toAlternate: z.number() }) }).nullable(),
  /** Density at the temperature and pressure of the input, unrounded [kg/m³]. */
  densityAtConditions: z.number(),
  subgroup: z.string(),
  /** Standard, edition, table and zone. */
  standard: z.string(),
  worksheet: z.array(worksheetLineSchema),
})
export type VolumeCorrectionOutput = Readonly<z.infer<typeof volumeCorrectionOutputSchema>>
