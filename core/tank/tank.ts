import { z } from 'zod'
import { VOLUME_UNITS } from '../units/index.ts'
import { exceptionSchema, worksheetLineSchema } from '../worksheet/index.ts'

const written = z.string().min(1).max(64)

/** How the lines of a table's file were laid out; absent: one level and one volume a line. */
export const TABLE_LAYOUTS = ['rows', 'increments', 'grid', 'feet-inches', 'parts'] as const
export type TableLayout = (typeof TABLE_LAYOUTS)[number]

export const TANK_BOTTOMS = ['flat', 'cone-up', 'cone-down', 'surveyed'] as const
export type TankBottom = (typeof TANK_BOTTOMS)[number]

/**
 * A capacity table as its certificate states it. Rows are `[level, volume]` as decimal text, strictly increasing in
 * level (millimetres, exact) and not decreasing in volume (table unit).
 */
export const capacityTableSchema = z.strictObject({
  certificate: z.string().min(1).max(80),
  issuedBy: z.string().min(1).max(80),
  issuedOn: z.string().regex(/^\d{4}-\d{2}-\d{2}$/),
  /** Temperature at which the shell has the table's dimensions: `60 degF`, `15 degC`. */
  baseTemperature: written,
  volumeUnit: z.enum(VOLUME_UNITS),
  /** How levels were written in the table: `mm`, `ft-in`, … for display. */
  levelUnit: z.enum(['m', 'cm', 'mm', 'in', 'ft', 'ft-in']),
  rows: z.array(z.tuple([z.string(), z.string()])).min(2).max(100_000),
  /** Which revision of the table this is, as the certificate counts them. */
  revision: z.string().min(1).max(20).optional(),
  bottom: z.enum(TANK_BOTTOMS).optional(),
  /** Volume below the datum plate: `12.345 m3`; the table's volumes include it. */
  heel: written.optional(),
  layout: z.enum(TABLE_LAYOUTS).optional(),
  /** What was found odd when the table was read, and accepted all the same. */
  noticed: z.array(exceptionSchema).max(60).optional(),
  /** How a computed table was made, step by step; absent: as the certificate prints it. */
  madeBy: z.array(worksheetLineSchema).max(400).optional(),
})
export type CapacityTable = Readonly<z.infer<typeof capacityTableSchema>>

export const SHELL_MATERIALS = ['mild-carbon-steel', 'stainless-304', 'stainless-316', 'stainless-17-4PH'] as const
export type ShellMaterial = (typeof SHELL_MATERIALS)[number]

export const TANK_SHAPES = ['upright-cylinder', 'horizontal-cylinder', 'sphere'] as const
export type TankShape = (typeof TANK_SHAPES)[number]

export const roofSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('none') }),
  z.strictObject({
    kind: z.enum(['internal-floating', 'external-floating']),
    /** Roof mass as on the certificate: `48500 kg`, `1215000 lb` (weight in air). */
    mass: written,
    /** Whether the table already deducts the roof, at which density. */
    inTable: z.boolean(),
    /** Density of the liquid for which the table deducts the roof; with `inTable` only. */
    referenceDensity: written.optional(),
    /** Adjustment printed in the table, as `24.59 bbl/degAPI`; used as printed when given. */
    printedAdjustment: written.optional(),
    /** Levels between which the roof is partly afloat, its legs in the low position. */
    criticalZone: z.strictObject({ from: written, to: written }),
    /** Heights of the legs in their two positions, and the one they stand in; absent: low. */
    legs: z.strictObject({ low: written, high: written, position: z.enum(['low', 'high']) }).optional(),
  }),
])
export type Roof = Readonly<z.infer<typeof roofSchema>>

export const tankSchema = z.strictObject({
  code: z.string().regex(/^[A-Z0-9][A-Z0-9-]{0,15}$/),
  name: z.string().min(1).max(80),
  /** Absent: an upright cylinder. */
  shape: z.enum(TANK_SHAPES).optional(),
  shellMaterial: z.enum(SHELL_MATERIALS),
  insulated: z.boolean(),
  roof: roofSchema,
  /** What levels are measured from, in words: `datum plate, 35 mm above the floor at the gauge well`. */
  datum: z.string().min(1).max(120),
  referenceGaugeHeight: written,
  /** How far an observed reference gauge height may differ: `3 mm`. */
  referenceHeightTolerance: written,
  /** Product it is in service for. */
  product: z.string(),
  /** Water cut that this tank usually shows; a cut above it is printed on the ticket. */
  usualWaterCut: written.optional(),
  capacityTable: capacityTableSchema,
})
export type Tank = Readonly<z.infer<typeof tankSchema>>
