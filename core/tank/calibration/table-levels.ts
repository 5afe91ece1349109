import { display } from '../../rounding/index.ts'
import { Decimal } from '../../units/index.ts'

/**
 * Levels of a computed table [mm]: every step from 0 to the top, the top itself, and the levels where the volume bends
 * (joints of courses, ends of deadwood, the crown of a bottom), to 0.1 mm.
 * @param step [mm], exact
 * @param top highest level [mm]
 * @param bends levels where something begins or ends [m]
 */
export function tableLevels(step: Decimal, top: number, bends: readonly number[]): readonly Decimal[] {
  const highest = new Decimal(display(top, 4))
  const count = highest.div(step).floor().toNumber()
  const regular = Array.from({ length: count + 1 }, (_, i) => step.times(i))
  const others = [highest, ...bends.map((metres) => new Decimal(display(metres * 1000, 1)))].filter((mm) => mm.gt(0) && mm.lte(highest))
  const known = new Set(regular.map((mm) => mm.toFixed()))
  const added = others.filter((mm) => !known.has(mm.toFixed()) && known.add(mm.toFixed()))
  return [...regular, ...added].toSorted((a, b) => a.cmp(b))
}
