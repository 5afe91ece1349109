import { discriminate } from '../rounding/index.ts'
import { convertVolume, Decimal, type VolumeUnit } from '../units/index.ts'
import type { ProbeFigures } from './probe-figures.ts'
import type { ProbeProfile } from './probe.ts'

/** The printed figures from which the volume is worked out of the mass. */
interface Printed { readonly mass: Decimal; readonly density: Decimal; readonly roofMass: number }

/**
 * What the difference between the two volumes is made of. Unrounded, the volume from mass differs from that of the table
 * because head pressure knows one mean area and the table the area of each stratum; because the shell bulges; and the printed
 * volume also because mass and mean density are rounded before the one is divided by the other.
 *   ΔV = Vtable − Vmass = (Mtable − Mhead)/ρ − Vbulge + rounding
 * @param figures unrounded
 * @param printed mass from head [kg] and mean density [kg/m³] as printed; mass of the roof that was taken off [kg]
 * @param unit of the volumes
 * @source MPMS-16.2 comparison of volumes
 */
export function explainDifference(figures: ProbeFigures, printed: Printed, unit: VolumeUnit): ProbeProfile['differenceExplained'] {
  const { massFromTable, massFromHead, averageDensity, bulge, volume } = figures
  const area = (massFromTable - massFromHead) / averageDensity
  const fromPrinted = printed.mass.plus(printed.roofMass).div(printed.density).toNumber()
  const rounding = (massFromHead + printed.roofMass) / averageDensity - fromPrinted
  const key = `volume ${unit}` as const
  const shown = (m3: number): { value: string; unit: string } => ({ value: discriminate(key, convertVolume(new Decimal(m3), 'm3', unit)).text, unit })
  const part = (m3: number): string => `${shown(m3).value} ${unit}`
  const densities = figures.strata.map((stratum) => stratum.density)
  const spread = discriminate('density kg/m3', Math.max(...densities) - Math.min(...densities)).text
  return [
    { cause: 'area', volume: shown(area), says: `Area: head pressure takes one mean area from the lowest module to the surface, the table that of every stratum. Where the area changes with height and the densities differ (here by ${spread} kg/m3) the two part: ${part(area)}.` },
    { cause: 'rounding', volume: shown(rounding), says: `Rounding: mass and mean density are rounded to 1 kg and 0.1 kg/m3 before the one is divided by the other; half a step of the density is ${part((volume * 0.05) / averageDensity)} here: ${part(rounding)}.` },
    { cause: 'bulging', volume: shown(-bulge), says: bulge === 0 ? 'Bulging: no coefficient was entered, so the shell is taken as the table has it.' : `Bulging: under its head the shell holds more than the table says, which the mass counts and the level does not: ${part(-bulge)}.` },
  ]
}
