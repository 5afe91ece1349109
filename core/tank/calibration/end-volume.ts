import { integrate } from './integrate.ts'

/** The end of a lying cylinder; lengths in metres. */
export type End =
  | { readonly kind: 'flat' }
  | { readonly kind: 'hemispherical' }
  /** Half of an ellipsoid; 2:1 where the depth is half the radius. */
  | { readonly kind: 'ellipsoidal'; readonly depth: number }
  /** A segment of a sphere. */
  | { readonly kind: 'dished'; readonly depth: number }
  /** A crown, a segment of a sphere, and a knuckle that leads it into the cylinder. */
  | { readonly kind: 'torispherical'; readonly crown: number; readonly knuckle: number }

/**
 * Depth of an end beyond the cylinder [m].
 *   torispherical: a = rc − √[(rc − rk)² − (R − rk)²]
 * @param end its kind and lengths [m]
 * @param radius R, inside radius of the cylinder [m]
 * @source MPMS-2.2E heads
 */
export function endDepth(end: End, radius: number): number {
  switch (end.kind) {
    case 'flat': return 0
    case 'hemispherical': return radius
    case 'ellipsoidal': case 'dished': return end.depth
    case 'torispherical': return end.crown - Math.sqrt((end.crown - end.knuckle) ** 2 - (radius - end.knuckle) ** 2)
  }
}

/**
 * Volume of liquid in one end, up to a height above the bottom of the cylinder [m³].
 *   half an ellipsoid of depth a: V = π a h² (3R − h) / (6R);  hemisphere: a = R
 *   segment of a sphere, crown and knuckle: V = ∫ f(y) y Ω(y) dy, f the depth at the radius y, Ω the angle below the liquid
 * @param end its kind and lengths [m]
 * @param radius R, inside radius of the cylinder [m]
 * @param height h, liquid above the lowest inside point of the cylinder [m], 0 to 2R
 * @source MPMS-2.2E heads
 * @source JONES-TANK-VOLUME horizontal tanks
 * @checked jones/ellipsoidal/36
 * @checked jones/dished/36
 * @checked jones/torispherical/36
 */
export function endVolume(end: End, radius: number, height: number): number {
  const h = Math.min(Math.max(height, 0), 2 * radius)
  switch (end.kind) {
    case 'flat': return 0
    case 'hemispherical': return ellipsoid(radius, radius, h)
    case 'ellipsoidal': return ellipsoid(end.depth, radius, h)
    case 'dished': {
      const sphere = (radius ** 2 + end.depth ** 2) / (2 * end.depth)
      return revolved((y) => Math.sqrt(Math.max(sphere ** 2 - y ** 2, 0)) - (sphere - end.depth), [], radius, h)
    }
    case 'torispherical': {
      const { crown, knuckle } = end
      const depth = endDepth(end, radius)
      const meet = (radius - knuckle) * crown / (crown - knuckle)
      const profile = (y: number): number => (y <= meet ? depth - crown + Math.sqrt(crown ** 2 - y ** 2) : Math.sqrt(Math.max(knuckle ** 2 - (y - radius + knuckle) ** 2, 0)))
      return revolved(profile, [meet], radius, h)
    }
  }
}

function ellipsoid(a: number, R: number, h: number): number {
  return Math.PI * a * h ** 2 * (3 * R - h) / (6 * R)
}

/** Volume below a level of a body of revolution about the axis of the cylinder, whose depth at the radius y is f(y). */
function revolved(f: (y: number) => number, kinks: readonly number[], R: number, h: number): number {
  const v = h - R
  const wet = (y: number): number => (y <= Math.abs(v) ? (v > 0 ? 2 * Math.PI : 0) : 2 * (Math.PI - Math.acos(v / y)))
  const ends = [...new Set([0, Math.min(Math.abs(v), R), ...kinks, R])].toSorted((a, b) => a - b)
  return ends.slice(1).reduce((sum, to, i) => sum + integrate((y) => f(y) * y * wet(y), ends[i] ?? 0, to), 0)
}
