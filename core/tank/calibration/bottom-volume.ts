/** A point of a tank's bottom: distance from the centre, and height above the corner of bottom and shell [m]. */
export interface BottomPoint { readonly radius: number; readonly height: number }

/**
 * What a bottom changes against a flat one at the corner [m³]: negative where it rises, positive where it lies deeper.
 *   B(z) = ∫ 2πr [ (z − b(r))⁺ − z⁺ ] dr from 0 to R, b straight between the points
 * A cone of height c up: −πR²c/3 once it is covered; down: +πR²c/3.
 * @param points from the centre outwards, the last at the shell with height 0 [m]
 * @param z liquid above the corner [m]; below it where the bottom lies deeper
 * @source MPMS-2.2A bottom volume
 * @source ISO-7507-1 tank bottoms
 * @checked jones/cone-down/24
 * @checked jones/cone-up/15
 */
export function bottomVolume(points: readonly BottomPoint[], z: number): number {
  return points.slice(1).reduce((sum, outer, i) => {
    const inner = points[i] ?? outer
    return sum + ring(inner, outer, z) - Math.max(z, 0) * Math.PI * (outer.radius ** 2 - inner.radius ** 2)
  }, 0)
}

/** Liquid above a straight ring of the bottom: ∫ 2πr (z − b(r))⁺ dr. */
function ring(inner: BottomPoint, outer: BottomPoint, z: number): number {
  const [under, over] = [z - inner.height, z - outer.height]
  if (under <= 0 && over <= 0) return 0
  if (under >= 0 && over >= 0) return wedge(inner.radius, outer.radius, under, over)
  const shore = inner.radius + (outer.radius - inner.radius) * under / (under - over)
  return under > 0 ? wedge(inner.radius, shore, under, 0) : wedge(shore, outer.radius, 0, over)
}

/** ∫ 2πr d(r) dr where the depth d goes straight from d1 at r1 to d2 at r2: π/3 (r2 − r1) [d1 (2r1 + r2) + d2 (r1 + 2r2)]. */
function wedge(r1: number, r2: number, d1: number, d2: number): number {
  return Math.PI / 3 * (r2 - r1) * (d1 * (2 * r1 + r2) + d2 * (r1 + 2 * r2))
}
