import { z } from 'zod'
import { gaugeSnapshotSchema } from '../gauge/index.ts'
import { productSchema, worksheetSchema } from '../quantity/index.ts'
import { tankSchema } from '../tank/index.ts'
import { exceptionSchema, quantitySchema, worksheetLineSchema } from '../worksheet/index.ts'

const written = z.string().min(1).max(64)

export const TRANSFER_KINDS = ['receipt', 'delivery'] as const
export type TransferKind = (typeof TRANSFER_KINDS)[number]

/** Contents of the transfer line at one of the two gauges: observed volume and its temperature. */
const lineContentsSchema = z.strictObject({ volume: written, temperature: written })

/** The line between tank and custody point, when it was not equally full at both gauges. */
export const lineFillSchema = z.strictObject({
  opening: lineContentsSchema, closing: lineContentsSchema,
  /** Code of the line: its change is then booked on its own account. */
  line: z.string().min(1).max(40).optional(),
})

export const transferInputSchema = z.strictObject({
  kind: z.enum(TRANSFER_KINDS),
  tank: tankSchema,
  product: productSchema,
  opening: gaugeSnapshotSchema,
  closing: gaugeSnapshotSchema,
  lineFill: lineFillSchema.optional(),
})
export type TransferInput = Readonly<z.infer<typeof transferInputSchema>>

const movedSchema = z.strictObject({
  gsv: quantitySchema, nsv: quantitySchema, mass: quantitySchema, weight: quantitySchema, water: quantitySchema,
})

export const transferResultSchema = z.strictObject({
  kind: z.enum(TRANSFER_KINDS),
  opening: worksheetSchema,
  closing: worksheetSchema,
  /** Lines of the subtraction, and of the line fill if any. */
  lines: z.array(worksheetLineSchema),
  /** Change of the tank, closing − opening: negative in a delivery. */
  tankChange: movedSchema,
  /** What was moved across the custody point, positive in the direction of the transfer; with the line fill. */
  moved: movedSchema,
  exceptions: z.array(exceptionSchema),
})
export type TransferResult = Readonly<z.infer<typeof transferResultSchema>>
export type Moved = Readonly<z.infer<typeof movedSchema>>
