import { z } from 'zod'
import { andThen, accepted, type Outcome } from '../refusal/index.ts'
import { MASS_UNITS, VOLUME_UNITS } from '../units/index.ts'
import { BASE_TEMPERATURES, checkSettings, COMMODITIES, EDITIONS, settingPaths, SETTINGS_SHAPE } from '../volume-correction/index.ts'
import { AIR_CONVENTION_NAMES, type AirConventionName } from './air-conventions.ts'

/**
 * A product: which standard and edition corrects it and by what settings, its base conditions, and the units it is booked
 * in. Which settings a commodity needs or may have, its family says; {@link checkProduct} holds them against it.
 */
export const productSchema = z.strictObject({
  code: z.string().regex(/^[A-Z0-9][A-Z0-9-]{0,15}$/),
  name: z.string().min(1).max(80),
  commodity: z.enum(COMMODITIES),
  ...SETTINGS_SHAPE,
  edition: z.enum(EDITIONS),
  baseTemperature: z.enum(BASE_TEMPERATURES),
  volumeUnit: z.enum(VOLUME_UNITS),
  massUnit: z.enum(MASS_UNITS),
  /** Unit in which base density is printed. */
  densityUnit: z.enum(['kg/m3', 'degAPI', 'RD']),
  /** How weight in air is made from mass, where the contract says; else as the edition has it. */
  airConvention: z.enum(AIR_CONVENTION_NAMES).optional(),
})
export type Product = Readonly<z.infer<typeof productSchema>>

/**
 * A product whose edition and settings fit its commodity.
 * Refuses what {@link checkSettings} refuses: `missing-value`, `value-not-used`, `out-of-range`, and unreadable settings.
 * @param product as the schema accepted it
 * @param path where it stood
 * @source HOUSE product
 */
export function checkProduct(product: Product, path: string): Outcome<Product> {
  return andThen(checkSettings(product.commodity, product, settingPaths(path)), () => accepted(product))
}

/** The convention for weight in air: as the contract says, else that of the edition. @source MPMS-11.5 density in air */
export function airConventionOf(product: Product): AirConventionName {
  return product.airConvention ?? (product.edition === 'ASTM-D1250-80' ? 'tables-1980' : 'MPMS-11.5')
}
