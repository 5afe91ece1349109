import { accepted, allOf, andThen, refused, type Outcome } from '../refusal/index.ts'
import { discriminate, display } from '../rounding/index.ts'
import { parsePercent, type Percent, type Temperature } from '../units/index.ts'
import { exactLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import { readAtAtmosphere, type TemperatureLimits } from './at-atmosphere.ts'
import type { BaseTemperature } from './commodity.ts'
import { definedAt60, readDensity, type DensityReading } from './density-reading.ts'
import type { ConditionPaths, Conditions, Family, FamilyInput, FamilyLiquid, FamilyPaths, ProductSettings, SettingPaths, WrittenConditions } from './family.ts'
import { missingDensity } from './family-findings.ts'
import { baseAsTemperature, liquidFromReading, liquidOfItself, type Expansion } from './liquid-at-atmosphere.ts'
import { curveAt, readCurve, type Curve, type OnCurve } from './product-curve.ts'

const CLAUSE = 'LAB-CERTIFICATE points'
/** Anything that a thermometer in a tank shows; the ends of the curve decide. */
const LIMITS: TemperatureLimits = { from: -100, to: 300, unit: 'degC', clause: 'COMMON-PRACTICE' }
/** Most that a tolerance may allow [%]. */
const WIDEST = 5

/**
 * A product by its own curve: density, or VCF, against temperature as a laboratory certificate gives it, on straight lines
 * between its points and never past its ends. A density that is stated or observed shifts the curve as a whole, if it is
 * within the tolerance that the curve states.
 * @source LAB-CERTIFICATE
 */
export const CURVE_FAMILY: Family = {
  editions: ['LAB-CERTIFICATE'],
  settings: { needs: ['curve'], may: [] },
  checkSettings: (input, paths) => andThen(settingsOf(input, paths), () => accepted(null)),
  readConditions,
  findLiquid,
}

function readConditions(written: WrittenConditions, paths: ConditionPaths): Outcome<Conditions> {
  return readAtAtmosphere(written, paths, LIMITS)
}

/** A curve with its values at the product's base temperature and at 60 °F. */
interface AtBase { readonly curve: Curve; readonly base: OnCurve; readonly tolerance: Percent | null }

function settingsOf(input: ProductSettings, paths: SettingPaths): Outcome<AtBase> {
  const written = input.curve
  if (written === undefined) return refused({ code: 'missing-value', path: paths.curve, value: '', limit: 'a product curve: density or VCF against temperature, from a certificate', clause: CLAUSE })
  const tolerance: Outcome<Percent | null> = written.tolerance === undefined ? accepted(null) : readTolerance(written.tolerance, `${paths.curve}.tolerance`)
  return andThen(allOf({ curve: readCurve(written, paths.curve), tolerance }), ({ curve, tolerance }) => {
    const points = `${paths.curve}.points`
    // °API gravity and relative density are made from the density at 60 °F, so that a curve reaches there
    const ends = allOf({ base: curveAt(curve, baseAsTemperature(input.baseTemperature), points), at60: curveAt(curve, baseAsTemperature('60 degF'), points) })
    return andThen(ends, ({ base }) => {
      if (curve.of === 'density' || Math.abs(base.value - 1) <= 0.0001) return accepted({ curve, base, tolerance })
      return refused({ code: 'out-of-range', path: points, value: `VCF ${display(base.value, 5)} at ${input.baseTemperature}`, limit: '0.9999 to 1.0001: a VCF is 1 at its base temperature, and that must be the base temperature of the product', clause: CLAUSE })
    })
  })
}

function readTolerance(text: string, path: string): Outcome<Percent | null> {
  return andThen(parsePercent(text, path), (share) => {
    if (share.value.gt(0) && share.value.lte(WIDEST)) return accepted<Percent | null>(share)
    return refused({ code: 'out-of-range', path, value: text, limit: `more than 0 and at most ${WIDEST} %`, clause: 'COMMON-PRACTICE' })
  })
}

function findLiquid(input: FamilyInput, paths: FamilyPaths): Outcome<FamilyLiquid> {
  const { baseTemperature } = input
  const reading: Outcome<DensityReading | null> = input.density === undefined ? accepted(null) : readDensity(input.density, paths.density, { baseTemperature, readConditions, clause: CLAUSE })
  return andThen(allOf({ settings: settingsOf(input, paths.settings), reading }), ({ settings, reading }) => {
    const { curve, base } = settings
    const expansion = expansionOf(settings, baseTemperature)
    if (reading !== null) return shifted(settings, expansion, reading, input, paths)
    if (curve.of === 'VCF') return refused(missingDensity(paths.density, CLAUSE))
    return accepted(liquidOfItself(expansion, base.value, baseTemperature, { formula: between(base), from: ['curve'], before: expansion.settings }))
  })
}

/** A curve moved as a whole to a density that was stated or observed. */
function shifted({ curve, tolerance }: AtBase, expansion: Expansion, reading: DensityReading, { baseTemperature }: FamilyInput, paths: FamilyPaths): Outcome<FamilyLiquid> {
  const { observed, density, used } = reading
  const at = observed?.temperature ?? baseAsTemperature(definedAt60(density.unit) ? '60 degF' : baseTemperature)
  return andThen(curveAt(curve, at, `${paths.density}.temperature`), (there) => {
    if (curve.of === 'density') {
      if (tolerance === null) return refused({ code: 'missing-value', path: `${paths.settings.curve}.tolerance`, value: '', limit: 'a density that shifts the curve needs how far it may be from it, as 0.5 %; or leave the density out', clause: CLAUSE })
      if (Math.abs(used / there.value - 1) * 100 > tolerance.value.toNumber()) {
        return refused({ code: 'density-off-curve', path: `${paths.density}.value`, value: density.text, limit: `within ${tolerance.text} of ${display(there.value, 1)} kg/m3 at ${at.text} by ${curve.named}`, clause: CLAUSE })
      }
    }
    return accepted(liquidFromReading(expansion, reading, baseTemperature))
  })
}

function expansionOf({ curve, base }: AtBase, baseTemperature: BaseTemperature): Expansion {
  // every temperature comes here through `within` or as one of the two that `settingsOf` found on the curve
  const ctl = (at: Temperature): number => valueAt(curve, at) / base.value
  return {
    standard: `product curve, ${curve.named}`, subgroup: 'curve', clause: CLAUSE,
    formula: curve.of === 'VCF' ? 'VCF(t), on the straight line between its two neighbours' : `ρ(t) / ρ(${baseTemperature}), on straight lines between neighbouring points`,
    notes: [curve.named], settings: [curveLine(curve, base, baseTemperature)],
    ctl: (_, at) => ctl(at),
    toBase: (density, at) => density / ctl(at),
    baseFormula: (density, t) => (curve.of === 'VCF' ? `${density} / VCF(${t})` : `${density} × ρ(${baseTemperature}) / ρ(${t})`),
    within: (at, path) => andThen(curveAt(curve, at, path), () => accepted(at)),
  }
}

function valueAt(curve: Curve, at: Temperature): number {
  const found = curveAt(curve, at, '')
  if (!found.ok) throw new Error(`${at.text} is not on the curve`)
  return found.value.value
}

function curveLine(curve: Curve, base: OnCurve, baseTemperature: BaseTemperature): WorksheetLine {
  const words = { symbol: 'curve', formula: between(base), from: [], clause: CLAUSE, notes: [curve.named] } as const
  if (curve.of === 'VCF') return exactLine({ ...words, name: `VCF of the product curve at ${baseTemperature}`, unit: '', value: base.value })
  return roundedLine({ ...words, name: `Density of the product curve at ${baseTemperature}`, unit: 'kg/m3', rounded: discriminate('density kg/m3', base.value) })
}

function between({ below, above }: OnCurve): string {
  return `on the straight line from ${below.written} at ${below.temperature} to ${above.written} at ${above.temperature}`
}
