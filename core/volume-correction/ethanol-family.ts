import { accepted, allOf, andThen, refused, type Outcome } from '../refusal/index.ts'
import { display } from '../rounding/index.ts'
import { degC, degF, readMeasured, writtenDigits, type Percent, type Temperature } from '../units/index.ts'
import { inputLine } from '../worksheet/index.ts'
import { readAtAtmosphere, within, type TemperatureLimits } from './at-atmosphere.ts'
import { readDensity, type DensityReading } from './density-reading.ts'
import { FUEL_ETHANOL, fuelEthanolVcf } from './ethanol.ts'
import { ethanolWaterDensity } from './ethanol-water.ts'
import type { ConditionPaths, Conditions, Family, FamilyInput, FamilyLiquid, FamilyPaths, ProductSettings, SettingPaths, WrittenConditions } from './family.ts'
import { densityNear, missingDensity, otherBase } from './family-findings.ts'
import { baseAsTemperature, liquidFromReading, liquidOfItself, type Expansion } from './liquid-at-atmosphere.ts'

const RULE = 'CFR40-80.1426'
const TABLES = 'OIML-R22'

/** The rule states no range; between these it stays within 0.0022 of the reference equation of state of pure ethanol. */
const RULE_LIMITS: TemperatureLimits = { from: 0, to: 120, unit: 'degF', clause: 'COMMON-PRACTICE' }
const TABLE_LIMITS: TemperatureLimits = { from: -20, to: 40, unit: 'degC', clause: 'OIML-R22 general formula' }
/** Densities of fuel ethanol, denatured or not, at 60 °F. */
const FUEL_DENSITY = { from: 775, to: 815 } as const
/** Spellings of a share by mass; one by volume is another number and is not accepted. */
const BY_MASS = { '%': ['% mass', 'mass%', '% by mass', '% m/m', 'wt%'] } as const
/** Least share of ethanol that stays liquid at −20 °C (from memory), so that below 0 °C nothing freezes [%]. */
const NEVER_FREEZES = 31
/** How far a stated density may be from the general formula. */
const NEAR = 0.01

/**
 * Ethanol: fuel ethanol by the rule of 40 CFR 80.1426(f)(8), base 60 °F; or ethanol with water by the general formula of
 * OIML R 22, for which `content` is the share of ethanol by mass, and which gives the density itself where none is stated.
 * @source CFR40-80.1426 (f)(8)(i)
 * @source OIML-R22 general formula
 */
export const ETHANOL_FAMILY: Family = {
  editions: [RULE, TABLES],
  settings: { needs: [], may: ['content'] },
  checkSettings: (input, paths) => andThen(settingsOf(input, paths), () => accepted(null)),
  readConditions,
  findLiquid: (input, paths) => andThen(allOf({ content: settingsOf(input, paths.settings), reading: readingOf(input, paths.density) }), ({ content, reading }) => (content === null ? byRule(input, paths, reading) : byTables(input, paths, reading, content))),
}

function readConditions(written: WrittenConditions, paths: ConditionPaths, edition: string): Outcome<Conditions> {
  return readAtAtmosphere(written, paths, edition === TABLES ? TABLE_LIMITS : RULE_LIMITS)
}

/** The share of ethanol by mass where the tables need it; null where the rule does not. */
function settingsOf(input: ProductSettings, paths: SettingPaths): Outcome<Percent | null> {
  if (input.edition !== TABLES) {
    const findings = [...otherBase(input.baseTemperature, ['60 degF'], paths.baseTemperature, RULE)]
    if (input.content !== undefined) findings.push({ code: 'value-not-used', path: paths.content, value: input.content, limit: 'the rule for fuel ethanol has one factor whatever the content; leave it out, or choose the edition OIML-R22', clause: RULE })
    return findings.length > 0 ? refused(...findings) : accepted(null)
  }
  if (input.content === undefined) return refused({ code: 'missing-value', path: paths.content, value: '', limit: 'the general formula needs the share of ethanol by mass, as 99.5 %', clause: 'OIML-R22 general formula' })
  return andThen(readMeasured(input.content, paths.content, BY_MASS, 'the share of ethanol by mass as 99.5 %'), (share) => {
    if (share.value.gte(0) && share.value.lte(100)) return accepted<Percent | null>(share)
    return refused({ code: 'out-of-range', path: paths.content, value: share.text, limit: '0 to 100 %, ethanol by mass', clause: 'OIML-R22 general formula' })
  })
}

function readingOf(input: FamilyInput, path: string): Outcome<DensityReading | null> {
  if (input.density === undefined) return input.edition === TABLES ? accepted(null) : refused(missingDensity(path, RULE))
  return readDensity(input.density, path, { baseTemperature: input.baseTemperature, readConditions: (written, paths) => readConditions(written, paths, input.edition), clause: input.edition === TABLES ? TABLES : RULE })
}

function byRule(input: FamilyInput, paths: FamilyPaths, reading: DensityReading | null): Outcome<FamilyLiquid> {
  if (reading === null) return refused(missingDensity(paths.density, RULE))
  const expansion: Expansion = {
    standard: '40 CFR 80.1426(f)(8), ethanol', subgroup: 'ethanol', clause: 'CFR40-80.1426 (f)(8)(i)', settings: [],
    formula: `${FUEL_ETHANOL.perDegF} t + ${FUEL_ETHANOL.constant}, t in °F`.replace('-', '−'), notes: ['the constant is from memory of the rule'],
    ctl: (_, at) => fuelEthanolVcf(degF(at)),
    toBase: (density, at) => density / fuelEthanolVcf(degF(at)),
    baseFormula: (density, t) => `${density} / VCF(${t})`,
    within: (at, path) => within(at, path, RULE_LIMITS),
  }
  const liquid = liquidFromReading(expansion, reading, input.baseTemperature)
  const far = densityNear(liquid.density60, FUEL_DENSITY, reading, `${paths.density}.value`, 'fuel ethanol')
  return far.length > 0 ? refused(...far) : accepted(liquid)
}

function byTables(input: FamilyInput, paths: FamilyPaths, reading: DensityReading | null, content: Percent): Outcome<FamilyLiquid> {
  const p = content.value.div(100).toNumber()
  const base = baseAsTemperature(input.baseTemperature)
  const baseDensity = ethanolWaterDensity(p, degC(base))
  const expansion = mixture(content, p, baseDensity, input)
  const observed = reading?.observed ?? null
  const there: Outcome<Temperature | null> = observed === null ? accepted(null) : expansion.within(observed.temperature, `${paths.density}.temperature`)
  return andThen(there, () => {
    if (reading === null) return accepted(liquidOfItself(expansion, baseDensity, input.baseTemperature, { formula: `ρ(p, ${input.baseTemperature})`, from: ['p'], before: expansion.settings }))
    const liquid = liquidFromReading(expansion, reading, input.baseTemperature)
    if (Math.abs(liquid.baseDensity / baseDensity - 1) <= NEAR) return accepted(liquid)
    return refused({ code: 'density-off-curve', path: `${paths.density}.value`, value: reading.density.text, limit: `within 1 % of ${display(baseDensity, 1)} kg/m3 at ${input.baseTemperature} for ${content.text}`, clause: 'COMMON-PRACTICE' })
  })
}

function mixture(content: Percent, p: number, baseDensity: number, input: FamilyInput): Expansion {
  const ctl = (at: Temperature): number => ethanolWaterDensity(p, degC(at)) / baseDensity
  return {
    standard: 'OIML R 22, ethanol and water', subgroup: 'ethanol-water', clause: 'OIML-R22 general formula', formula: `ρ(p, t) / ρ(p, ${input.baseTemperature})`, notes: [],
    settings: [inputLine({ symbol: 'p', name: 'Ethanol by mass', value: writtenDigits(content), unit: '%', clause: 'OIML-R22 general formula' })],
    ctl: (_, at) => ctl(at),
    toBase: (density, at) => density / ctl(at),
    baseFormula: (density, t) => `${density} × ρ(p, ${input.baseTemperature}) / ρ(p, ${t})`,
    within: (at, path) => within(at, path, p * 100 >= NEVER_FREEZES ? TABLE_LIMITS : { ...TABLE_LIMITS, from: 0, clause: 'COMMON-PRACTICE' }),
  }
}
