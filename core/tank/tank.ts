import { z } from 'zod'
import { VOLUME_UNITS } from '../units/index.ts'

const written = z.string().min(1).max(64)

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
})
export type CapacityTable = Readonly<z.infer<typeof capacityTableSchema>>

export const SHELL_MATERIALS = ['mild-carbon-steel', 'stainless-304', 'stainless-316', 'stainless-17-4PH'] as const
export type ShellMaterial = (typeof SHELL_MATERIALS)[number]

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
    /** Levels between which the roof is partly afloat. */
    criticalZone: z.strictObject({ from: written, to: written }),
  }),
])
export type Roof = Readonly<z.infer<typeof roofSchema>>

export const tankSchema = z.strictObject({
  code: z.string().regex(/^[A-Z0-9][A-Z0-9-]{0,15}$/),
  name: z.string().min(1).max(80),
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
  capacityTable: capacityTableSchema,
})
export type Tank = Readonly<z.infer<typeof tankSchema>>
