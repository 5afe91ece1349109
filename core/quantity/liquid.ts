import type { GaugeSnapshot } from '../gauge/index.ts'
import type { Outcome } from '../refusal/index.ts'
import { findLiquid, settingPaths, type FamilyLiquid } from '../volume-correction/index.ts'
import type { Product } from './product.ts'

/**
 * The liquid of a snapshot with its base density: stated, or found from what the instrument showed, by the family and the
 * edition that the product names.
 * Refuses what the volume correction refuses, at the paths of the snapshot and of the product.
 * @param path of the snapshot
 * @source MPMS-11.1-2004 11.1.6.2
 */
export function liquidOf(product: Product, { density }: GaugeSnapshot, path: string): Outcome<FamilyLiquid> {
  const { value, temperature, pressure, instrument } = density
  return findLiquid(
    product.commodity,
    { ...product, density: { value, temperature, pressure, hydrometer: instrument === 'hydrometer' && temperature !== undefined } },
    { density: `${path}.density`, settings: settingPaths('product') },
  )
}
