import { chance } from './chance.ts'

export const FOOT = 0.3048
export const INCH = 0.0254
export const BARREL = 0.158987294928
export const POUND = 0.45359237

/** A tank as it was built; lengths in metres, masses in kilograms. */
export interface Shape {
  readonly seed: number
  readonly radius: number
  /** Height up to which the table goes. */
  readonly height: number
  /** Rise of the bottom from the shell to the centre, where water cannot lie. */
  readonly coneRise: number
  readonly courseHeight: number
  /** Step of the table's rows. */
  readonly step: number
  /** A roof that the table deducts: displaced volume, and the levels between which it comes afloat. */
  readonly roof?: { readonly displaced: number; readonly from: number; readonly to: number }
}

/** One row of a table: level [m] and volume [m³]. */
export interface Row { readonly level: number; readonly volume: number }

/**
 * Strapping as a calibration company finds it: courses a little narrower or wider than drawn, dents of a few hundredths
 * of a per cent, a cone-up bottom, some deadwood near the bottom, and the roof taken off where the table includes it.
 */
export function strapped(shape: Shape): readonly Row[] {
  const luck = chance(shape.seed)
  const courses = Array.from({ length: Math.ceil(shape.height / shape.courseHeight) + 1 }, () => 1 + luck.normal(0.0003))
  const dents = Array.from({ length: Math.ceil(shape.height / 0.5) + 1 }, () => 1 + luck.normal(0.00015))
  const rows: Row[] = []
  let shell = 0
  const count = Math.floor(shape.height / shape.step + 1e-9)
  for (let i = 0; i <= count; i++) {
    const level = i * shape.step
    if (i > 0) {
      const middle = level - shape.step / 2
      const width = (courses[Math.floor(middle / shape.courseHeight)] ?? 1) * shape.radius
      shell += Math.PI * width ** 2 * shape.step * (dents[Math.floor(middle / 0.5)] ?? 1)
    }
    rows.push({ level, volume: Math.max(0, shell - coneBelow(shape, level) - deadwood(shape, level) - roofBelow(shape, level)) })
  }
  return rows
}

/** The part of the bottom cone that stands below a level. */
function coneBelow({ radius, coneRise }: Shape, level: number): number {
  const whole = (Math.PI * radius ** 2 * coneRise) / 3
  if (level >= coneRise) return whole
  const above = (Math.PI * (radius * (1 - level / coneRise)) ** 2 * (coneRise - level)) / 3
  return whole - above
}

/** Sump pipes and column feet: 0.02 % of the area up to one metre. */
function deadwood({ radius }: Shape, level: number): number {
  return Math.PI * radius ** 2 * 0.0002 * Math.min(level, 1)
}

function roofBelow({ roof }: Shape, level: number): number {
  if (roof === undefined || level <= roof.from) return 0
  return level >= roof.to ? roof.displaced : (roof.displaced * (level - roof.from)) / (roof.to - roof.from)
}

/** The level at which the table shows a volume. */
export function levelAt(rows: readonly Row[], volume: number): number {
  const above = rows.findIndex((row) => row.volume >= volume)
  const upper = rows[Math.max(above, 1)]
  const lower = rows[Math.max(above, 1) - 1]
  if (above < 0 || upper === undefined || lower === undefined) throw new Error(`no level for ${String(volume)} m3`)
  return lower.level + ((volume - lower.volume) / (upper.volume - lower.volume)) * (upper.level - lower.level)
}
