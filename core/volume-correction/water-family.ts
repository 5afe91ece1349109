import { accepted, allOf, andThen, refused, type Outcome } from '../refusal/index.ts'
import { display } from '../rounding/index.ts'
import { degC, type Temperature } from '../units/index.ts'
import { readAtAtmosphere, within } from './at-atmosphere.ts'
import { readDensity, type DensityReading } from './density-reading.ts'
import type { ConditionPaths, Conditions, Family, FamilyInput, FamilyLiquid, FamilyPaths, ProductSettings, SettingPaths, WrittenConditions } from './family.ts'
import { baseAsTemperature, liquidFromReading, liquidOfItself, type Expansion } from './liquid-at-atmosphere.ts'
import { WATER, WATER_EQUATIONS, waterOf, type KnownWater, type WaterEquationName } from './water-density.ts'

/** How far a stated density of water may be from its equation: salts that no equation knows make it heavier. */
const NEAR = 0.01

/**
 * Water, fresh or of the sea, at any base temperature; it knows its density itself, and a stated one must be near it.
 * @source MPMS-11.4.1 Patterson and Morris
 * @source UNESCO-44 one-atmosphere equation of state
 */
export const WATER_FAMILY: Family = {
  editions: WATER_EQUATIONS,
  settings: { needs: [], may: ['salinity'] },
  checkSettings: (input, paths) => andThen(settingsOf(input, paths), () => accepted(null)),
  readConditions,
  findLiquid,
}

/** The equation of an edition; the usual one for an edition of another commodity, which is refused elsewhere. */
function equationOf(edition: string): WaterEquationName {
  return WATER_EQUATIONS.find((name) => name === edition) ?? WATER_EQUATIONS[0]
}

function readConditions(written: WrittenConditions, paths: ConditionPaths, edition: string): Outcome<Conditions> {
  return readAtAtmosphere(written, paths, WATER[equationOf(edition)].limits)
}

function settingsOf(input: ProductSettings, paths: SettingPaths): Outcome<KnownWater> {
  return waterOf(equationOf(input.edition), input.salinity, paths.salinity)
}

function findLiquid(input: FamilyInput, paths: FamilyPaths): Outcome<FamilyLiquid> {
  const { baseTemperature } = input
  const equation = WATER[equationOf(input.edition)]
  const reading: Outcome<DensityReading | null> = input.density === undefined ? accepted(null)
    : readDensity(input.density, paths.density, { baseTemperature, readConditions: (written, at) => readConditions(written, at, input.edition), clause: equation.clause })
  return andThen(allOf({ water: settingsOf(input, paths.settings), reading }), ({ water, reading }) => {
    const baseDensity = water.density(degC(baseAsTemperature(baseTemperature)))
    const expansion = expansionOf(water, baseDensity, baseTemperature)
    if (reading === null) return accepted(liquidOfItself(expansion, baseDensity, baseTemperature, { formula: `ρw(${baseTemperature}), ${water.name.toLowerCase()}`, from: expansion.settings.map((line) => line.symbol), before: expansion.settings }))
    const liquid = liquidFromReading(expansion, reading, baseTemperature)
    if (Math.abs(liquid.baseDensity / baseDensity - 1) <= NEAR) return accepted(liquid)
    return refused({ code: 'density-off-curve', path: `${paths.density}.value`, value: reading.density.text, limit: `within 1 % of ${display(baseDensity, 1)} kg/m3 at ${baseTemperature}; for brine use a product curve`, clause: 'COMMON-PRACTICE' })
  })
}

function expansionOf({ equation, density, lines }: KnownWater, baseDensity: number, baseTemperature: string): Expansion {
  const ctl = (at: Temperature): number => density(degC(at)) / baseDensity
  return {
    standard: equation.standard, subgroup: equation.salt ? 'seawater' : 'water', clause: equation.clause,
    formula: `ρw(t) / ρw(${baseTemperature}), ρw = ${equation.formula}`, notes: equation.notes, settings: lines,
    ctl: (_, at) => ctl(at),
    toBase: (observed, at) => observed / ctl(at),
    baseFormula: (observed, t) => `${observed} × ρw(${baseTemperature}) / ρw(${t})`,
    within: (at, path) => within(at, path, equation.limits),
  }
}
