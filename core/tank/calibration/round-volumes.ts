import { endVolume, type End } from './end-volume.ts'

/** A lying cylinder: inside radius and straight length, and its two ends [m]. */
export interface LyingCylinder { readonly radius: number; readonly length: number; readonly ends: readonly [End, End] }

/**
 * Area of a circle's segment [m²].
 *   A = R² acos((R − h) / R) − (R − h) √(2Rh − h²)
 * @param radius R [m]
 * @param height h above the lowest point [m]; below 0 nothing, above 2R the whole circle
 * @source MPMS-2.2E partial volumes
 */
export function segmentArea(radius: number, height: number): number {
  const h = Math.min(Math.max(height, 0), 2 * radius)
  const up = radius - h
  return radius ** 2 * Math.acos(up / radius) - up * Math.sqrt(Math.max(2 * radius * h - h ** 2, 0))
}

/**
 * Volume of liquid in a lying cylinder with its ends [m³].
 *   V = A(h) × L + V end 1 + V end 2
 * @param tank inside dimensions [m]
 * @param height h, liquid above the lowest inside point [m]
 * @source MPMS-2.2E partial volumes
 * @checked fluids/flat/0.75
 * @checked jones/ellipsoidal/84
 */
export function lyingCylinderVolume({ radius, length, ends }: LyingCylinder, height: number): number {
  return segmentArea(radius, height) * length + endVolume(ends[0], radius, height) + endVolume(ends[1], radius, height)
}

/**
 * Volume of liquid in a sphere [m³].
 *   V = π h² (3R − h) / 3
 * @param radius R, inside [m]
 * @param height h, liquid above the lowest inside point [m]
 * @source API-2552 partial volumes
 * @checked sphere/partial/0.7
 */
export function sphereVolume(radius: number, height: number): number {
  const h = Math.min(Math.max(height, 0), 2 * radius)
  return Math.PI * h ** 2 * (3 * radius - h) / 3
}
