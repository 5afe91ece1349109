import { accepted, allOf, andThen, refused, type Finding, type Outcome } from '../refusal/index.ts'
import { degF, type Temperature } from '../units/index.ts'
import { readAtAtmosphere, within, type TemperatureLimits } from './at-atmosphere.ts'
import { CHEMICALS, CHEMICAL_NAMES, CHEMICALS_TO, type ChemicalName } from './chemicals-table.ts'
import { readDensity, type DensityReading } from './density-reading.ts'
import type { ConditionPaths, Conditions, Family, FamilyInput, FamilyLiquid, FamilyPaths, ProductSettings, SettingPaths, WrittenConditions } from './family.ts'
import { densityNear, missingDensity, otherBase } from './family-findings.ts'
import { liquidFromReading, type Expansion } from './liquid-at-atmosphere.ts'
import { polynomial } from './polynomial.ts'

/**
 * VCF of an aromatic hydrocarbon or cyclohexane to 60 °F: V60 = V × VCF,
 *   VCF = a + bT + cT² + dT³ + eT⁴
 * @param component a row of {@link CHEMICALS}
 * @param T temperature, from above the freezing point to 140 [°F]
 * @source ASTM-D1555 volume correction
 */
export function chemicalVcf(component: ChemicalName, T: number): number {
  return polynomial(CHEMICALS[component].vcf, T)
}

/** The range in which the standard makes its factors was not read; see {@link CHEMICALS_TO}. */
const LIMITS: TemperatureLimits = { from: 0, to: CHEMICALS_TO, unit: 'degF', clause: 'COMMON-PRACTICE' }

/**
 * Industrial aromatic hydrocarbons and cyclohexane, base 60 °F. The coefficients for 15 °C (ASTM D1555M) could not be had, so
 * another base temperature is refused; a product curve serves there.
 * @source ASTM-D1555
 */
export const CHEMICAL_FAMILY: Family = {
  editions: ['ASTM-D1555'],
  settings: { needs: ['component'], may: [] },
  checkSettings: (input, paths) => andThen(settingsOf(input, paths), () => accepted(null)),
  readConditions,
  findLiquid,
}

function settingsOf(input: ProductSettings, paths: SettingPaths): Outcome<ChemicalName> {
  const { component } = input
  const base = otherBase(input.baseTemperature, ['60 degF'], paths.baseTemperature, 'ASTM-D1555')
  const named = CHEMICAL_NAMES.find((name) => name === component?.trim().toLowerCase())
  const wrong: Finding[] = named === undefined
    ? [{ code: component === undefined ? 'missing-value' : 'out-of-range', path: paths.component, value: component ?? '', limit: `one of ${CHEMICAL_NAMES.join(', ')}`, clause: 'ASTM-D1555' }]
    : []
  return named === undefined || base.length > 0 ? refused(...wrong, ...base) : accepted(named)
}

function findLiquid(input: FamilyInput, paths: FamilyPaths): Outcome<FamilyLiquid> {
  const reading: Outcome<DensityReading> = input.density === undefined ? refused(missingDensity(paths.density, 'ASTM-D1555'))
    : readDensity(input.density, paths.density, { baseTemperature: input.baseTemperature, readConditions, clause: 'ASTM-D1555' })
  return andThen(allOf({ component: settingsOf(input, paths.settings), reading }), ({ component, reading }) => {
    const expansion = expansionOf(component)
    const there: Outcome<Temperature | null> = reading.observed === null ? accepted(null) : expansion.within(reading.observed.temperature, `${paths.density}.temperature`)
    return andThen(there, () => {
      const liquid = liquidFromReading(expansion, reading, input.baseTemperature)
      const { density15, within: near } = CHEMICALS[component]
      const middle = density15 * chemicalVcf(component, 60) / chemicalVcf(component, 59)
      const far = densityNear(liquid.density60, { from: middle - near, to: middle + near }, reading, `${paths.density}.value`, CHEMICALS[component].name)
      return far.length > 0 ? refused(...far) : accepted(liquid)
    })
  })
}

function readConditions(written: WrittenConditions, paths: ConditionPaths): Outcome<Conditions> {
  return readAtAtmosphere(written, paths, LIMITS)
}

function expansionOf(component: ChemicalName): Expansion {
  const { name, vcf, from } = CHEMICALS[component]
  const terms = vcf.map((coefficient, power) => ({ coefficient, power })).filter(({ coefficient }) => coefficient !== 0)
  const formula = terms.map(({ coefficient, power }) => (power === 0 ? `${coefficient}` : `${coefficient < 0 ? '− ' : '+ '}${digitsOf(Math.abs(coefficient))} t${['', '', '²', '³', '⁴'][power] ?? ''}`)).join(' ')
  return {
    standard: `ASTM D1555-09, ${name}`, subgroup: component, clause: 'ASTM-D1555', formula: `${formula}, t in °F`, settings: [], notes: [],
    ctl: (_, at) => chemicalVcf(component, degF(at)),
    toBase: (density, at) => density / chemicalVcf(component, degF(at)),
    baseFormula: (density, t) => `${density} / VCF(${t})`,
    within: (at, path) => within(at, path, { ...LIMITS, from }),
  }
}

/** Small coefficients with their power of ten, as the table of the standard has them. */
function digitsOf(coefficient: number): string {
  return `${coefficient}`.replace(/e-(\d+)$/, (_, power: string) => `×10⁻${[...power].map((digit) => '⁰¹²³⁴⁵⁶⁷⁸⁹'[Number(digit)] ?? '').join('')}`)
}
