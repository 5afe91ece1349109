import { accepted, allOf, andThen, refused, type Outcome } from '../refusal/index.ts'
import { degC, degF } from '../units/index.ts'
import { readAtAtmosphere, within, type TemperatureLimits } from './at-atmosphere.ts'
import { BIODIESEL_RULE, biodieselVcf, METHYL_ESTER_SLOPE, methylEsterCtl, methylEsterDensityAt15 } from './biodiesel.ts'
import { readDensity, type DensityReading } from './density-reading.ts'
import type { ConditionPaths, Conditions, Family, FamilyInput, FamilyLiquid, FamilyPaths, ProductSettings, SettingPaths, WrittenConditions } from './family.ts'
import { densityNear, missingDensity, otherBase } from './family-findings.ts'
import { liquidFromReading, type Expansion } from './liquid-at-atmosphere.ts'

const RULE = 'CFR40-80.1426'
const ESTERS = 'EN-14214'

/** The rule states no range; between these it stays within 0.0003 of the reference equation of state of methyl oleate. */
const RULE_LIMITS: TemperatureLimits = { from: 32, to: 140, unit: 'degF', clause: 'COMMON-PRACTICE' }
/** Densities are measured between 20 and 60 °C (note to the table of requirements); from the base temperature on nothing is added. */
const ESTER_LIMITS: TemperatureLimits = { from: 15, to: 60, unit: 'degC', clause: 'EN-14214 Annex B' }
/** 860 to 900 kg/m³ at 15 °C (EN 14214, table of requirements), at 60 °F. */
const DENSITY = { from: 860 - METHYL_ESTER_SLOPE * (5 / 9), to: 900 - METHYL_ESTER_SLOPE * (5 / 9) } as const

/**
 * Neat biodiesel (fatty acid methyl esters): by the rule of 40 CFR 80.1426(f)(8), base 60 °F, or by the slope of EN 14214,
 * base 15 °C. No published equation for blends of biodiesel with diesel was read, so there is none here: the density of such
 * a blend is found by mass and volume (`blendDensity`), or its certificate gives a product curve.
 * @source CFR40-80.1426 (f)(8)(ii)
 * @source EN-14214 Annex B
 */
export const BIODIESEL_FAMILY: Family = {
  editions: [RULE, ESTERS],
  settings: { needs: [], may: [] },
  checkSettings,
  readConditions,
  findLiquid,
}

function checkSettings(input: ProductSettings, paths: SettingPaths): Outcome<null> {
  const served = input.edition === ESTERS ? '15 degC' : '60 degF'
  const findings = otherBase(input.baseTemperature, [served], paths.baseTemperature, input.edition === ESTERS ? ESTERS : RULE)
  return findings.length > 0 ? refused(...findings) : accepted(null)
}

function readConditions(written: WrittenConditions, paths: ConditionPaths, edition: string): Outcome<Conditions> {
  return readAtAtmosphere(written, paths, edition === ESTERS ? ESTER_LIMITS : RULE_LIMITS)
}

function findLiquid(input: FamilyInput, paths: FamilyPaths): Outcome<FamilyLiquid> {
  const expansion = input.edition === ESTERS ? BY_SLOPE : BY_RULE
  const reading: Outcome<DensityReading> = input.density === undefined ? refused(missingDensity(paths.density, expansion.clause))
    : readDensity(input.density, paths.density, { baseTemperature: input.baseTemperature, readConditions: (written, at) => readConditions(written, at, input.edition), clause: expansion.clause })
  return andThen(allOf({ settings: checkSettings(input, paths.settings), reading }), ({ reading }) => {
    const liquid = liquidFromReading(expansion, reading, input.baseTemperature)
    const far = densityNear(liquid.density60, DENSITY, reading, `${paths.density}.value`, 'biodiesel (860 to 900 kg/m3 at 15 degC)')
    return far.length > 0 ? refused(...far) : accepted(liquid)
  })
}

const BY_RULE: Expansion = {
  standard: '40 CFR 80.1426(f)(8), biodiesel', subgroup: 'biodiesel', clause: 'CFR40-80.1426 (f)(8)(ii)', settings: [],
  formula: `−${-BIODIESEL_RULE.perDegF} t + ${BIODIESEL_RULE.constant}, t in °F`, notes: ['the coefficients are from memory of the rule'],
  ctl: (_, at) => biodieselVcf(degF(at)),
  toBase: (density, at) => density / biodieselVcf(degF(at)),
  baseFormula: (density, t) => `${density} / VCF(${t})`,
  within: (at, path) => within(at, path, RULE_LIMITS),
}

const BY_SLOPE: Expansion = {
  standard: 'EN 14214, Annex B', subgroup: 'methyl-esters', clause: 'EN-14214 Annex B', settings: [],
  formula: `1 − ${METHYL_ESTER_SLOPE} (t − 15) / ρb, t in °C`, notes: ['the slope is from memory of the annex'],
  ctl: (density15, at) => methylEsterCtl(density15, degC(at)),
  toBase: (density, at) => methylEsterDensityAt15(density, degC(at)),
  baseFormula: (density, t) => `${density} + ${METHYL_ESTER_SLOPE} (${t} − 15)`,
  within: (at, path) => within(at, path, ESTER_LIMITS),
}
