import { z } from 'zod'
import { BASE_TEMPERATURES, COMMODITIES, EDITIONS } from '../volume-correction/index.ts'
import { MASS_UNITS, VOLUME_UNITS } from '../units/index.ts'

/** A product: which correction applies, its base conditions, and the units it is booked in. */
export const productSchema = z.strictObject({
  code: z.string().regex(/^[A-Z0-9][A-Z0-9-]{0,15}$/),
  name: z.string().min(1).max(80),
  commodity: z.enum(COMMODITIES),
  /** For `special`: `0.000510 /degF`. */
  alpha: z.string().max(64).optional(),
  edition: z.enum(EDITIONS),
  baseTemperature: z.enum(BASE_TEMPERATURES),
  volumeUnit: z.enum(VOLUME_UNITS),
  massUnit: z.enum(MASS_UNITS),
  /** Unit in which base density is printed. */
  densityUnit: z.enum(['kg/m3', 'degAPI', 'RD']),
})
export type Product = Readonly<z.infer<typeof productSchema>>
