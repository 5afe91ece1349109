import { z } from 'zod'
import { exceptionSchema, quantitySchema, worksheetLineSchema } from '../worksheet/index.ts'

export const staticQuantitySchema = z.strictObject({
  tov: quantitySchema, fw: quantitySchema, ctsh: z.string(), fra: quantitySchema, gov: quantitySchema,
  baseDensity: quantitySchema, ctl: z.string(), cpl: z.string(), ctpl: z.string(),
  gsv: quantitySchema, csw: z.string(), nsv: quantitySchema,
  /** Net standard volume plus what S&W took: GSV − NSV. */
  swVolume: quantitySchema,
  /** Total calculated volume, GSV + FW. */
  tcv: quantitySchema,
  /** Mass in vacuum of the net standard volume. */
  mass: quantitySchema,
  /** Apparent weight in air of the net standard volume. */
  weight: quantitySchema,
})
export type StaticQuantity = Readonly<z.infer<typeof staticQuantitySchema>>

export const worksheetSchema = z.strictObject({
  lines: z.array(worksheetLineSchema),
  quantity: staticQuantitySchema,
  exceptions: z.array(exceptionSchema),
  /** Density zone that was used: `crude`, `gasoline`, … */
  subgroup: z.string(),
  /** Standard, edition, table and zone that gave the factors: `API MPMS 11.1-2004, refined products (gasoline)`. */
  standard: z.string(),
})
export type Worksheet = Readonly<z.infer<typeof worksheetSchema>>
