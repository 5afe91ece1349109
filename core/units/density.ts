import type { Outcome } from '../refusal/index.ts'
import { printMeasured, readMeasured, type Measured, type UnitWords } from './measured-value.ts'

export type DensityUnit = 'kg/m3' | 'g/cm3' | 'degAPI' | 'RD'
export type Density = Measured<DensityUnit>

/** Density of water at 60 °F [kg/m³]. @source MPMS-11.1-2004 11.1.5.1 @source MPMS-11.4.1 */
export const WATER_AT_60F = 999.016

const WORDS: UnitWords<DensityUnit> = {
  'kg/m3': ['kg/m³', 'kg m-3'], 'g/cm3': ['g/cm³', 'g/ml', 'kg/l', 't/m3', 't/m³'],
  degAPI: ['°api', 'api', 'deg api', '° api'], RD: ['sg', 'rd 60/60', 'sg 60/60'],
}

/** Reads `31.4 degAPI`, `845.3 kg/m3`, `0.8453 g/cm3`, `0.8682 RD` (relative density 60/60 °F). */
export function parseDensity(text: string, path: string): Outcome<Density> {
  return readMeasured(text, path, WORDS, 'a density as 845.3 kg/m3, 31.4 degAPI, 0.8682 RD or 0.8453 g/cm3')
}

/**
 * ρ = RD × ρw, RD = 141.5 / (API + 131.5), ρw the density of water at 60 °F. API gravities at or below −131.5 give a
 * value that is not positive and is refused by the range check of the commodity group.
 * @param density as written
 * @param water60 density of water at 60 °F of the edition [kg/m³]
 * @source MPMS-11.1-2004 11.1.5.1
 */
export function kilogramsPerCubicMetre(density: Density, water60 = WATER_AT_60F): number {
  const value = density.value.toNumber()
  switch (density.unit) {
    case 'kg/m3': return value
    case 'g/cm3': return density.value.times(1000).toNumber()
    case 'RD': return value * water60
    case 'degAPI': return (141.5 / (value + 131.5)) * water60
  }
}

/**
 * A density in kg/m³ expressed in another unit, unrounded.
 * @param kgPerM3 density; at 60 °F for °API gravity and relative density [kg/m³]
 * @param unit the other unit
 * @param water60 density of water at 60 °F of the edition [kg/m³]
 * @source MPMS-11.1-2004 11.1.5.1
 */
export function densityIn(kgPerM3: number, unit: DensityUnit, water60 = WATER_AT_60F): number {
  switch (unit) {
    case 'kg/m3': return kgPerM3
    case 'g/cm3': return kgPerM3 / 1000
    case 'RD': return kgPerM3 / water60
    case 'degAPI': return 141.5 / (kgPerM3 / water60) - 131.5
  }
}

/** The canonical spelling: digits, a blank, the unit word; reading it gives the same density back. */
export function printDensity(density: Density): string {
  return printMeasured(density.value, density.unit)
}
