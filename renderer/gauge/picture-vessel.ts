import type { TankShape } from '../../core/tank/index.ts'

/** A tank's inside as drawn, y downwards: straight between two ends that bulge by `end`. No bulge: upright; half the width: a sphere. */
export interface Vessel { readonly left: number; readonly right: number; readonly crown: number; readonly floor: number; readonly end: number }

/** What a round tank stands in: the vessel, the ground below it, and where a share of the reference gauge height stands. */
export interface VesselFrame { readonly vessel: Vessel; readonly ground: number; readonly yOf: (share: number) => number }

export type RoundShape = Exclude<TankShape, 'upright-cylinder'>

/** From wall to wall at a height; no width where the height is above the crown or below the floor of a round tank. */
export function chord({ left, right, crown, floor, end }: Vessel, y: number): readonly [left: number, right: number] {
  if (end === 0) return [left, right]
  const radius = (floor - crown) / 2
  const off = Math.min(1, Math.abs(y - (crown + radius)) / radius)
  const back = end * (1 - Math.sqrt(1 - off * off))
  return [left + back, right - back]
}

/** The inside between two heights as a path, the walls bulging as the ends do; both heights kept within a round tank. */
export function band(vessel: Vessel, high: number, low: number): string {
  const { crown, floor, end } = vessel
  const kept = (y: number): number => (end === 0 ? y : Math.min(floor, Math.max(crown, y)))
  const [top, bottom] = [kept(high), kept(low)]
  const [topLeft, topRight] = chord(vessel, top)
  const [bottomLeft, bottomRight] = chord(vessel, bottom)
  const wall = end === 0 ? 'L' : `A${end} ${(floor - crown) / 2} 0 0 0 `
  return `M${topLeft} ${top}${wall}${bottomLeft} ${bottom}H${bottomRight}${wall}${topRight} ${top}Z`
}

/** The whole of the inside as a path. */
export function outline(vessel: Vessel): string {
  return band(vessel, vessel.crown, vessel.floor)
}

/** The same vessel with its wall so much further out. */
export function grown({ left, right, crown, floor, end }: Vessel, by: number): Vessel {
  return { left: left - by, right: right + by, crown: crown - by, floor: floor + by, end: end + by }
}

/** A round tank of this width on its ground: a sphere as high as wide, a lying cylinder with ends as deep as a quarter of its height. */
export function roundVessel(shape: RoundShape, left: number, right: number, floor: number): Vessel {
  const width = right - left
  const height = shape === 'sphere' ? width : width * 0.62
  return { left, right, floor, crown: floor - height, end: shape === 'sphere' ? width / 2 : height / 4 }
}

/**
 * A round tank with its scale.
 * @param crownShare height of the crown as a share of the reference gauge height, above 0
 * @param clear how far the floor of the tank stands above the ground
 */
export function vesselFrame(shape: RoundShape, crownShare: number, { left, right, ground, clear }: { readonly left: number; readonly right: number; readonly ground: number; readonly clear: number }): VesselFrame {
  const vessel = roundVessel(shape, left, right, ground - clear)
  return { vessel, ground, yOf: (share) => vessel.floor - (share / crownShare) * (vessel.floor - vessel.crown) }
}

/** What it stands on, as lines: legs from the wall of a sphere, saddles under a lying cylinder. */
export function stand(shape: RoundShape, vessel: Vessel, ground: number): string {
  const middle = (vessel.left + vessel.right) / 2
  const half = (vessel.right - vessel.left) / 2
  if (shape === 'sphere') {
    return [-0.95, -0.42, 0.42, 0.95].map((at) => {
      const y = vessel.floor - half + half * Math.sqrt(1 - at * at)
      return `M${middle + at * half} ${y}V${ground}`
    }).join('')
  }
  const [narrow, wide] = [half * 0.13, half * 0.18]
  return [-0.5, 0.5].map((at) => {
    const x = middle + at * half
    return `M${x - narrow} ${vessel.floor}L${x - wide} ${ground}H${x + wide}L${x + narrow} ${vessel.floor}`
  }).join('')
}
