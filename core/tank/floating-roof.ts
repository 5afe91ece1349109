import { accepted, allOf, andThen, optional, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { millimetres, parseLength, type Decimal, type Length } from '../units/index.ts'
import type { FloatingRoof, PrintedAdjustment } from './roof.ts'
import type { Roof } from './tank.ts'

/** Whether there is a floating roof, and if so whether it rests on its legs, floats, or does a part of both. */
export type RoofPosition = 'none' | 'landed' | 'partly-afloat' | 'afloat'

/** Where the roof is, and what was allowed but has to be printed. */
export interface RoofFound { readonly position: RoofPosition; readonly exceptions: readonly Finding[] }

/** Ends of a critical zone above datum [mm]. */
export interface CriticalZone { readonly from: Decimal; readonly to: Decimal }

/**
 * The critical zone as the legs stand: that of the certificate is for legs in the low position; in the high position it
 * lies higher by the difference. Where the table deducts the roof it was made for the low position, so that the zone then
 * reaches from there to the end of the raised one: nothing between them is right.
 * Refuses what {@link parseLength} refuses.
 * @param roof that floats
 * @source MPMS-12.1.1 critical zone
 * @source COMMON-PRACTICE legs in the high position
 */
export function criticalZoneOf(roof: FloatingRoof): Outcome<CriticalZone> {
  const read = allOf<{ from: Length; to: Length; low: Length | undefined; high: Length | undefined }>({
    from: parseLength(roof.criticalZone.from, 'tank.roof.criticalZone.from'), to: parseLength(roof.criticalZone.to, 'tank.roof.criticalZone.to'),
    low: optional(roof.legs?.low, (text) => parseLength(text, 'tank.roof.legs.low')), high: optional(roof.legs?.high, (text) => parseLength(text, 'tank.roof.legs.high')),
  })
  return andThen(read, ({ from, to, low, high }) => {
    const zone = { from: millimetres(from), to: millimetres(to) }
    if (roof.legs?.position !== 'high' || low === undefined || high === undefined) return accepted(zone)
    const raised = millimetres(high).minus(millimetres(low))
    return accepted({ from: roof.inTable ? zone.from : zone.from.plus(raised), to: zone.to.plus(raised) })
  })
}

/**
 * Where the roof is at a level; a level in the critical zone, its two ends included, is refused, since the roof is partly
 * afloat there and no table tells how much it displaces. With a reason it is allowed, and the reason is an exception to
 * print. Below the zone the roof stands on its legs and displaces nothing.
 * Refuses `roof-in-critical-zone`, and what {@link parseLength} refuses.
 * @param roof of the tank
 * @param levelMm level above datum [mm]
 * @param path where the level stood
 * @param reason why a gauge inside the zone is booked all the same
 * @source MPMS-12.1.1 critical zone
 * @checked FRA-CRITICAL-ZONE
 */
export function roofAt(roof: Roof, levelMm: Decimal, path: string, reason?: string): Outcome<RoofFound> {
  if (roof.kind === 'none') return accepted({ position: 'none', exceptions: [] })
  return andThen(criticalZoneOf(roof), ({ from, to }): Outcome<RoofFound> => {
    if (levelMm.lt(from)) return accepted({ position: 'landed', exceptions: [] })
    if (levelMm.gt(to)) return accepted({ position: 'afloat', exceptions: [] })
    const value = `${levelMm.toFixed()} mm`
    if (reason !== undefined) return accepted({ position: 'partly-afloat', exceptions: [{ code: 'critical-zone-allowed', path, value, limit: reason, clause: 'MPMS-12.1.1 critical zone' }] })
    return refused({ code: 'roof-in-critical-zone', path, value, limit: zoneInWords(roof, to), clause: 'MPMS-12.1.1 critical zone' })
  })
}

function zoneInWords(roof: FloatingRoof, to: Decimal): string {
  if (roof.legs?.position !== 'high') return `${roof.criticalZone.from} and ${roof.criticalZone.to}`
  return `${roof.criticalZone.from} and ${to.toFixed()} mm, its legs in the high position`
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
  | { readonly by: 'load'; readonly weight: Decimal; readonly base: Decimal; readonly ctl: Decimal }
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
 * Snow or water on the roof, which no table knows: −W load / (D × CTL)
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
    case 'load':
      return roofDisplacement(basis.weight, basis.base.times(basis.ctl)).negated()
  }
}
