import { bottomVolume, type BottomPoint } from './bottom-volume.ts'

/** Standard acceleration of free fall [m/s²]. */
export const GRAVITY = 9.80665

/** A course of plates as it stands at the base temperature of the table, unstressed [m]. */
export interface Course { readonly from: number; readonly to: number; readonly radius: number; readonly plate: number }

/** The head of liquid that stretches the shell: density [kg/m³] and Young's modulus [Pa]. */
export interface HeadStress { readonly density: number; readonly modulus: number }

/** How far a tank leans, and what was measured along or across it. */
export interface Tilt {
  /** Rise over run, 0 to 1/70. */
  readonly ratio: number
  /** Circumferences taken square to the axis, or with the tape level all round. */
  readonly circumferences: 'square' | 'level'
  /** Dips taken on a plumb tape, or along the shell in a pipe that leans with it. */
  readonly dips: 'plumb' | 'along-shell'
}

/** Deadwood that takes room between two levels, spread evenly; negative where it gives room [m, m³]. */
export interface Deadwood { readonly from: number; readonly to: number; readonly volume: number }

/** Everything that an upright cylinder holds or that takes its room. */
export interface UprightCylinder {
  readonly courses: readonly Course[]
  /** Height of the datum plate above the corner of bottom and shell [m]; negative below it. */
  readonly datum: number
  readonly bottom: readonly BottomPoint[]
  readonly deadwood: readonly Deadwood[]
  readonly head: HeadStress | undefined
  readonly tilt: Tilt | undefined
}

/** The parts of an upright cylinder's volume at a level [m³]. */
export interface UprightVolume { readonly shell: number; readonly head: number; readonly bottom: number; readonly deadwood: number; readonly total: number }

/**
 * Volume of liquid in an upright cylinder up to a level above the datum plate [m³].
 *   V = Σ π r² Δz + Σ 2π ρ g r³ / (E t) ∫ (z − s) ds + B(z) − deadwood
 * Leaning by m = tan θ: z = L √(1 + m²) for a plumb dip, and areas × 1 / √(1 + m²) for circumferences taken level.
 * The stretch is that of a thin hoop, to the first order of the strain.
 * @param tank as measured, at base temperature
 * @param level L above the datum plate [m]
 * @source MPMS-2.2A open capacity, liquid head, deadwood
 * @source ISO-7507-1 open capacity
 */
export function uprightVolume(tank: UprightCylinder, level: number): UprightVolume {
  const z = heightAlongShell(tank, level)
  const lean = tank.tilt === undefined ? 1 : Math.hypot(1, tank.tilt.ratio)
  const across = tank.tilt?.circumferences === 'level' ? 1 / lean : 1
  const wetted = tank.courses.map((course) => ({ ...course, wet: Math.max(Math.min(course.to, z) - course.from, 0) }))
  const shell = across * sum(wetted.map(({ radius, wet }) => Math.PI * radius ** 2 * wet))
  const head = tank.head === undefined ? 0 : across * sum(wetted.map((course) => stretch(course, z, tank.head)))
  const bottom = across * bottomVolume(tank.bottom, z)
  const deadwood = -sum(tank.deadwood.map(({ from, to, volume }) => volume * Math.min(Math.max((level - from) / (to - from), 0), 1)))
  return { shell, head, bottom, deadwood, total: shell + head + bottom + deadwood }
}

/** Height along the shell above its corner that belongs to a level above the datum plate [m]. */
export function heightAlongShell({ datum, tilt }: Pick<UprightCylinder, 'datum' | 'tilt'>, level: number): number {
  return tilt?.dips === 'plumb' ? (level + datum) * Math.hypot(1, tilt.ratio) : level + datum
}

/** What a course holds more because the liquid stretches it: 2π ρ g r³ / (E t) × [(z − z1)² − (z − z2)²] / 2. */
function stretch({ from, radius, plate, wet }: Course & { readonly wet: number }, z: number, head: HeadStress | undefined): number {
  if (head === undefined || wet <= 0) return 0
  const pressure = ((z - from) ** 2 - (z - from - wet) ** 2) / 2
  return 2 * Math.PI * head.density * GRAVITY * radius ** 3 / (head.modulus * plate) * pressure
}

/**
 * Strain of a thin hoop under a head of liquid.
 *   ε = ρ g h r / (E t)
 * @param head density [kg/m³] and modulus [Pa]
 * @param depth h, liquid above the hoop [m], 0 or more
 * @param radius r [m]
 * @param plate t [m]
 * @source MPMS-2.2A liquid head
 */
export function hoopStrain(head: HeadStress, depth: number, radius: number, plate: number): number {
  return head.density * GRAVITY * Math.max(depth, 0) * radius / (head.modulus * plate)
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}
