import type { Finding } from '../refusal/index.ts'
import { display } from '../rounding/index.ts'
import type { Citation } from '../sources.ts'
import type { BaseTemperature } from './commodity.ts'
import type { DensityReading } from './density-reading.ts'

/** The finding for a liquid whose equation gives no density: it must be stated. @source COMMON-PRACTICE density for mass */
export function missingDensity(path: string, clause: Citation): Finding {
  return { code: 'missing-value', path, value: '', limit: 'this liquid needs its density, at base conditions or as observed, as 845.3 kg/m3', clause }
}

/**
 * The finding for a base temperature for which an equation is not made; none where it is.
 * @param base of the product
 * @param served base temperatures of the edition
 * @param path where the base temperature stood
 * @param clause the edition
 * @source COMMON-PRACTICE base temperature of an equation
 */
export function otherBase(base: BaseTemperature, served: readonly BaseTemperature[], path: string, clause: Citation): readonly Finding[] {
  return served.includes(base) ? [] : [{ code: 'out-of-range', path, value: base, limit: `${served.join(' or ')}; for another base temperature use a product curve`, clause }]
}

/**
 * The finding for a density that belongs to another liquid; none where it is near enough.
 * @param density60 density at 60 °F as found [kg/m³]
 * @param range at 60 °F, both ends included [kg/m³]
 * @param reading the density as written
 * @param path where its value stood
 * @source COMMON-PRACTICE densities of pure substances
 * @param of what the range is of: `benzene`
 */
export function densityNear(density60: number, range: { readonly from: number; readonly to: number }, reading: DensityReading, path: string, of: string): readonly Finding[] {
  if (density60 >= range.from && density60 <= range.to) return []
  return [{ code: 'density-outside-group', path, value: reading.density.text, limit: `${display(range.from, 1)} to ${display(range.to, 1)} kg/m3 at 60 degF for ${of}`, clause: 'COMMON-PRACTICE' }]
}
