import { convertVolume, Decimal, massIn, type MassUnit, type VolumeUnit } from '../units/index.ts'
import { AIR_CONVENTIONS, type AirConventionName, type AirRule } from './air-conventions.ts'

/**
 * Density in air from density in vacuum [kg/m³], unrounded, by a convention; by that of 2009 where none is named.
 *   2009: D = 1.000149926 ρ − 1.199407795;  1980: D = (ρ − 1.22) / (1 − 1.22 / 8100);  short form: D = ρ − 1.1
 * @param density ρ, density in vacuum [kg/m³], more than 1.3
 * @param convention a row of {@link AIR_CONVENTIONS}
 * @source MPMS-11.5 density in air
 * @checked d1555m-00/benzene
 * @checked d1250-80/56/850
 */
export function densityInAir(density: Decimal, convention: AirConventionName = 'MPMS-11.5'): Decimal {
  const rule: AirRule = AIR_CONVENTIONS[convention].rule
  switch (rule.by) {
    case 'line': return density.times(rule.slope).minus(rule.offset)
    case 'buoyancy': return density.minus(rule.air).div(new Decimal(1).minus(new Decimal(rule.air).div(rule.weights)))
    case 'difference': return density.minus(rule.less)
  }
}

/**
 * Mass in vacuum, or with the density in air the weight in air, of a volume; unrounded, in the unit of mass.
 *   m = V × ρ;  W = V × D
 * @param volume at base conditions, in its unit
 * @param volumeUnit unit of the volume
 * @param density in vacuum for the mass, in air for the weight, at the same base conditions [kg/m³]
 * @param massUnit unit of the answer
 * @source MPMS-11.5 mass and weight
 * @checked const/lb-per-gal
 */
export function massOfVolume(volume: Decimal, volumeUnit: VolumeUnit, density: Decimal, massUnit: MassUnit): Decimal {
  return massIn(convertVolume(volume, volumeUnit, 'm3').times(density), massUnit)
}
