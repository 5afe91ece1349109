import { z } from 'zod'
import { densitySchema, gaugeSnapshotSchema } from '../gauge/index.ts'
import { productSchema, worksheetSchema } from '../quantity/index.ts'
import { tankSchema } from '../tank/index.ts'
import { exceptionSchema, quantitySchema, worksheetLineSchema } from '../worksheet/index.ts'

const written = z.string().min(1).max(64)

/** What moves or changes its name inside the terminal, between no two parties. */
export const STOCK_MOVEMENTS = ['tank-to-tank', 'blend', 'regrade', 'water-draw-off', 'line-fill'] as const
export type StockMovementKind = (typeof STOCK_MOVEMENTS)[number]

/** A tank with both its gauges. */
const gaugedTankSchema = z.strictObject({ tank: tankSchema, product: productSchema, opening: gaugeSnapshotSchema, closing: gaugeSnapshotSchema })
export type GaugedTank = Readonly<z.infer<typeof gaugedTankSchema>>

/** A tank under one product name, at the one gauge of a regrade. */
const regradedTankSchema = z.strictObject({ tank: tankSchema, product: productSchema, gauge: gaugeSnapshotSchema })
export type RegradedTank = Readonly<z.infer<typeof regradedTankSchema>>

/** Contents of a line at one instant: stated at base conditions, or as observed and corrected to them. */
export const lineContentsSchema = z.union([
  z.strictObject({ at: z.string(), net: written }),
  z.strictObject({ at: z.string(), volume: written, temperature: written, density: densitySchema, sedimentAndWater: written }),
])
export type LineStanding = Readonly<z.infer<typeof lineContentsSchema>>

/** A line by its code, before and after. */
const filledLineSchema = z.strictObject({ code: z.string().min(1).max(40), product: productSchema, opening: lineContentsSchema, closing: lineContentsSchema })
export type FilledLine = Readonly<z.infer<typeof filledLineSchema>>

export const stockInputSchema = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('tank-to-tank'), from: gaugedTankSchema, to: gaugedTankSchema, line: filledLineSchema.optional() }),
  z.strictObject({ kind: z.literal('blend'), from: z.array(gaugedTankSchema).min(1).max(10), to: gaugedTankSchema, line: filledLineSchema.optional() }),
  z.strictObject({ kind: z.literal('regrade'), from: regradedTankSchema, to: regradedTankSchema }),
  /** Net oil that went with the water, as stated; absent: none. */
  z.strictObject({ kind: z.literal('water-draw-off'), tank: gaugedTankSchema, netOil: written.optional() }),
  z.strictObject({ kind: z.literal('line-fill'), line: filledLineSchema }),
])
export type StockInput = Readonly<z.infer<typeof stockInputSchema>>

/** What a stock movement does to one product in one tank or line. */
export const stockLegResultSchema = z.strictObject({
  place: z.enum(['tank', 'line']),
  code: z.string(),
  product: z.string(),
  opening: gaugeSnapshotSchema.optional(),
  closing: gaugeSnapshotSchema.optional(),
  openingWorksheet: worksheetSchema.optional(),
  closingWorksheet: worksheetSchema.optional(),
  /** Contents of the line as they were written. */
  contents: z.strictObject({ opening: lineContentsSchema, closing: lineContentsSchema }).optional(),
  /** Contents of the line at base conditions. */
  stated: z.strictObject({ opening: quantitySchema, closing: quantitySchema }).optional(),
  /** Signed net standard volume that is booked. */
  nsv: quantitySchema,
  /** Signed mass in vacuum; absent where contents were stated as a volume. */
  mass: quantitySchema.optional(),
  /** Signed change of free water, where there was one. */
  water: quantitySchema.optional(),
})
export type StockLegResult = Readonly<z.infer<typeof stockLegResultSchema>>

export const stockResultSchema = z.strictObject({
  kind: z.enum(STOCK_MOVEMENTS),
  /** When it was complete: the last gauge. */
  at: z.string(),
  legs: z.array(stockLegResultSchema),
  /** Sum of all legs in the unit of the receiving tank: what was lost or gained on the way. */
  difference: quantitySchema,
  /** Change of the tank that nobody booked, in a water draw-off. */
  unbooked: quantitySchema.optional(),
  lines: z.array(worksheetLineSchema),
  exceptions: z.array(exceptionSchema),
})
export type StockResult = Readonly<z.infer<typeof stockResultSchema>>
