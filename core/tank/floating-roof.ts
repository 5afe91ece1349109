import { accepted, refused, type Outcome } from '../refusal/index.ts'
import { millimetres, parseLength, type Decimal } from '../units/index.ts'
import type { PrintedAdjustment } from './roof.ts'
import type { Roof } from './tank.ts'

/** Whether there is a floating roof, and if so whether it rests on its legs or floats. */
export type RoofPosition = 'none' | 'landed' | 'afloat'

/**
 * Where the roof is at a level; a level in the critical zone, its two ends included, is refused, since the roof is partly
 * afloat there and no table tells how much it displaces. Below the zone the roof stands on its legs and displaces nothing.
 * Refuses `roof-in-critical-zone`, and what {@link parseLength} refuses.
 * @param roof of the tank
 * @param levelMm level above datum [mm]
 * @param path where the level stood
 * @source MPMS-12.1.1 critical zone
 * @checked FRA-CRITICAL-ZONE
 */
export function refuseCriticalZone(roof: Roof, levelMm: Decimal, path: string): Outcome<RoofPosition> {
  if (roof.kind === 'none') return accepted('none')
  const from = parseLength(roof.criticalZone.from, 'tank.roof.criticalZone.from')
  const to = parseLength(roof.criticalZone.to, 'tank.roof.criticalZone.to')
  if (!from.ok) return from
  if (!to.ok) return to
  if (levelMm.lt(millimetres(from.value))) return accepted('landed')
  if (levelMm.gt(millimetres(to.value))) return accepted('afloat')
  const limit = `${roof.criticalZone.from} and ${roof.criticalZone.to}`
  return refused({ code: 'roof-in-critical-zone', path, value: `${levelMm.toFixed()} mm`, limit, clause: 'MPMS-12.1.1 critical zone' })
}

/**
 * Volume that a floating roof displaces [m³].
 *   V = W / D
 * @param weight W, weight of the roof in air [kg], more than 0
 * @param densityInAir D, density in air of the liquid that touches the roof [kg/m³], more than 0
 * @source MPMS-12.1.1 floating roof adjustment
 * @checked FRA-ROOFWEIGHT-01
 */
export function roofDisplacement(weight: Decimal, densityInAir: Decimal): Decimal {
  return weight.div(densityInAir)
}

/** What a floating roof changes, by how the capacity table treats it; densities as they stand on the worksheet. */
export type RoofBasis =
  | { readonly by: 'printed'; readonly printed: PrintedAdjustment; readonly reference: Decimal; readonly observed: Decimal }
  | { readonly by: 'weight'; readonly weight: Decimal; readonly reference: Decimal; readonly base: Decimal; readonly ctl: Decimal }
  | { readonly by: 'deduction'; readonly weight: Decimal; readonly base: Decimal; readonly ctl: Decimal }

/**
 * Adjustment of the observed volume for a floating roof; unrounded, in m³, except as printed: in the unit printed.
 * Table deducts the roof at a reference density, and prints the adjustment:
 *   FRA = (API ref − API observed) × printed; per kg/m³: FRA = (ρ observed − ρ ref) × printed
 * Table deducts the roof, no printed figure: what the table took off is put back, what the roof displaces is taken off:
 *   FRA = W / D ref − W / (D × CTL)
 * Table without the roof: FRC = −W / (D × CTL), always negative
 * @param basis gravities or densities at tank temperature [°API or kg/m³], weight in air [kg], densities in air [kg/m³], CTL
 * @source MPMS-12.1.1 floating roof adjustment
 * @checked FRA-DIFF-01
 * @checked FRC-FORMULA
 */
export function floatingRoofAdjustment(basis: RoofBasis): Decimal {
  switch (basis.by) {
    case 'printed': {
      const difference = basis.printed.per === 'degAPI' ? basis.reference.minus(basis.observed) : basis.observed.minus(basis.reference)
      return difference.times(basis.printed.value)
    }
    case 'weight':
      return roofDisplacement(basis.weight, basis.reference).minus(roofDisplacement(basis.weight, basis.base.times(basis.ctl)))
    case 'deduction':
      return roofDisplacement(basis.weight, basis.base.times(basis.ctl)).negated()
  }
}
