import type { Product } from '../../core/quantity/index.ts'
import type { Tank } from '../../core/tank/index.ts'

/** The kinds of text a sheet holds. */
export type WrittenKind = 'level' | 'cut' | 'temperature' | 'density' | 'pressure' | 'share' | 'volume' | 'words'

/** The unit that a bare number is given, by kind; words have none. */
export type UsualUnits = Readonly<Record<Exclude<WrittenKind, 'words'>, string>>

/** Units as this tank's table and this product are written: levels as in the table, the rest as the product is booked. */
export function usualUnits(tank: Tank | undefined, product: Product | undefined): UsualUnits {
  const level = tank?.capacityTable.levelUnit ?? 'm'
  const imperial = product ? product.baseTemperature.endsWith('degF') : (tank?.capacityTable.baseTemperature.endsWith('degF') ?? false)
  return {
    level, cut: level === 'ft-in' || level === 'ft' ? 'in' : level === 'm' ? 'mm' : level,
    temperature: imperial ? 'degF' : 'degC', density: product?.densityUnit ?? (imperial ? 'degAPI' : 'kg/m3'),
    pressure: imperial ? 'psi' : 'kPa', share: '%', volume: product?.volumeUnit ?? (imperial ? 'bbl' : 'm3'),
  }
}

const NUMBER = /^[+\-\u2212]?(?:\d+(?:\.\d*)?|\.\d+)$/
const FEET_INCHES = /^(\d+)[ -]+(\d+(?:\.\d+)?)((?:[ -]+)\d+\/\d+)?$/
const INCHES = /^(?:\d+[ -]+)?\d+\/\d+$/

/**
 * What was typed, with the usual unit behind a bare number. `41 3 5/8` on a tank in feet becomes `41 ft 3 5/8 in`.
 * Anything else stays as it was typed, for the core to read or refuse.
 */
export function withUsualUnit(typed: string, kind: WrittenKind, units: UsualUnits): string {
  const text = typed.trim()
  if (kind === 'words' || text === '') return typed
  const unit = units[kind]
  if (unit === 'ft-in') {
    const parts = FEET_INCHES.exec(text)
    if (parts) return `${parts[1]} ft ${parts[2]}${parts[3] ?? ''} in`
    return NUMBER.test(text) ? `${text} ft` : typed
  }
  if (unit === 'in' && INCHES.test(text)) return `${text} in`
  return withUnit(typed, unit)
}

/** What was typed, with a unit behind a bare number; anything else as it was typed. */
export function withUnit(typed: string, unit: string): string {
  const text = typed.trim()
  return NUMBER.test(text) ? `${text} ${unit}` : typed
}

/** The unit as the empty field shows it. */
export function unitHint(kind: WrittenKind, units: UsualUnits): string {
  if (kind === 'words') return ''
  return units[kind] === 'ft-in' ? 'ft in n/d' : units[kind]
}
