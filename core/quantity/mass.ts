import { convertVolume, massIn, type Decimal, type MassUnit, type VolumeUnit } from '../units/index.ts'

/**
 * Density in air from density in vacuum: D = slope × ρ − offset, both in kg/m³; air of 1.19923 kg/m³ against weights of
 * 8000 kg/m³. The tables of 1980 used 1.22 and 8100 and differ in the last digit here and there.
 */
export const IN_AIR = { slope: '1.000149926', offset: '1.199407795', source: 'MPMS-11.5' } as const

/**
 * Density in air [kg/m³], unrounded.
 *   D = 1.000149926 ρ − 1.199407795
 * @param density ρ, density in vacuum [kg/m³], more than 1.2
 * @source MPMS-11.5 density in air
 * @checked d1555m-00/benzene
 * @checked d1250-80/56/850
 */
export function densityInAir(density: Decimal): Decimal {
  return density.times(IN_AIR.slope).minus(IN_AIR.offset)
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
