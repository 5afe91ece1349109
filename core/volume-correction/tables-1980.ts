import { accepted, allOf, andThen, refused, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import { degC, degF, densityIn, kilogramsPerCubicMetre, perDegF, type Density, type Expansion, type Temperature } from '../units/index.ts'
import type { BaseTemperature, Group } from './commodity.ts'
import { definedAt60, readDensity, type DensityReading } from './density-reading.ts'
import {
  BASE_1980, densityRange1980, expansion1980, roundedExpansion, searchBase1980, vcf1980, WATER_1980, zoneAt1980,
  type Search1980, type System, type Zone1980,
} from './edition-1980.ts'
import type { FamilyInput, FamilyPaths } from './family.ts'
import { densityOutside1980, readConditions1980, readExpansion1980 } from './limits-1980.ts'

/** A liquid of the tables of 1980: densities, zone and α, all as the tables are entered with. */
export interface Liquid1980 {
  readonly group: Group
  readonly baseTemperature: BaseTemperature
  /** System of the even table, whose α and zone are used. */
  readonly system: System
  readonly zone: Zone1980
  readonly reading: DensityReading
  readonly expansion: Expansion | null
  /** Base density as the even table is entered: as stated, or as the odd table gives it, rounded. */
  readonly tabulated: Density
  /** What the odd table was rounded from [kg/m³], and the passes to it; null where the density was stated. */
  readonly search: { readonly rho: number; readonly system: System; readonly passes: number } | null
  /** Density at the base temperature, at 60 °F, and at the base of the system [kg/m³]. */
  readonly baseDensity: number
  readonly density60: number
  readonly systemDensity: number
  /** α rounded to 7 decimals, in the degrees of the system, and before rounding. */
  readonly alpha: number
  readonly alphaUnrounded: number
  /** VCF from the base of the system to the base temperature: 1, or that to 20 °C. */
  readonly vcfToBase: number
}

/** The system of a base temperature: the tables to 20 °C go through 15 °C. */
export function systemOf(baseTemperature: BaseTemperature): System {
  return baseTemperature === '60 degF' ? '60 degF' : '15 degC'
}

/** t − Tb in the degrees of a system. */
export function fromBase1980(system: System, temperature: Temperature): number {
  return (system === '60 degF' ? degF(temperature) : degC(temperature)) - BASE_1980[system]
}

/**
 * The liquid that was written, by the tables of 1980. An observed density is taken to base by the odd table (5, 23, 53, 59),
 * and rounded as that is printed, 0.1 °API, 0.0001 or 0.1 kg/m³; the even table (6, 24, 54, 60) is entered with what is
 * printed. °API and relative density belong to 60 °F, so to a base of 15 or 20 °C they go on by the expansion at 60 °F
 * (Table 3); a density at 15 °C is printed in them by that at 15 °C (Table 51).
 * Refuses all that cannot be read at once, then `density-outside-group`, `density-not-converged`.
 * @source ASTM-D1250-80 Tables 5, 23, 53, 59
 * @checked d1250-80/5B/32/78
 * @checked d1250-80/3/0
 */
export function findLiquid1980(group: Group, input: FamilyInput, paths: FamilyPaths): Outcome<Liquid1980> {
  const { density, baseTemperature } = input
  const read = allOf<{ expansion: Expansion | null; reading: DensityReading }>({
    expansion: input.alpha === undefined ? accepted(null) : readExpansion1980(input.alpha, paths.settings.alpha),
    reading: density === undefined
      ? refused({ code: 'missing-value', path: paths.density, value: '', limit: 'the tables are entered with a density', clause: 'ASTM-D1250-80' })
      : readDensity(density, paths.density, { baseTemperature, readConditions: readConditions1980, clause: 'ASTM-D1250-80 Tables 5, 23, 53', water60: WATER_1980 }),
  })
  return andThen(read, ({ expansion, reading }) => {
    const alphas = { '60 degF': expansion === null ? null : perDegF(expansion), '15 degC': expansion === null ? null : perDegF(expansion) * 1.8 }
    const asked: Asked = { group, alphas, written: reading.density.text, path: `${paths.density}.value` }
    return andThen(tabulatedOf(asked, reading, baseTemperature), ({ tabulated, search }) =>
      andThen(densitiesOf(asked, tabulated, baseTemperature), ({ density60, systemDensity }) => {
        const system = systemOf(baseTemperature)
        const zone = zoneAt1980(group, system, systemDensity)
        const alphaUnrounded = alphas[system] ?? expansion1980(zone, systemDensity)
        const alpha = roundedExpansion(system, alphaUnrounded)
        const vcfToBase = baseTemperature === '20 degC' ? vcf1980(alpha, 5) : 1
        const statedThere = !definedAt60(tabulated.unit)
        return accepted({
          group, baseTemperature, system, zone, reading, expansion, tabulated, search, density60, systemDensity, alpha, alphaUnrounded, vcfToBase,
          baseDensity: statedThere ? kilogramsPerCubicMetre(tabulated) : systemDensity * vcfToBase,
        })
      }))
  })
}

/** Group, α and written density, as the tables are asked for. */
interface Asked {
  readonly group: Group
  readonly alphas: { readonly [S in System]: number | null }
  readonly written: string
  readonly path: string
}

/** Base density that the even table is entered with: as stated, or as the odd table prints it. */
function tabulatedOf(asked: Asked, { density, observed, used }: DensityReading, baseTemperature: BaseTemperature): Outcome<Pick<Liquid1980, 'tabulated' | 'search'>> {
  if (observed === null) return accepted({ tabulated: density, search: null })
  const system = definedAt60(density.unit) ? '60 degF' : systemOf(baseTemperature)
  return andThen(toBase(asked, system, used, fromBase1980(system, observed.temperature)), ({ rho, passes }) => {
    const printed = !definedAt60(density.unit) && baseTemperature === '20 degC' ? away(asked, system, rho, 5) : rho
    const rounded = discriminate(`density ${density.unit}`, densityIn(printed, density.unit, WATER_1980))
    return accepted({ tabulated: { text: `${rounded.text} ${density.unit}`, value: rounded.value, unit: density.unit }, search: { rho: printed, system, passes } })
  })
}

/** Density at 60 °F and at the base of the system, of the density that the even table is entered with. */
function densitiesOf(asked: Asked, tabulated: Density, baseTemperature: BaseTemperature): Outcome<Pick<Liquid1980, 'density60' | 'systemDensity'>> {
  const rho = kilogramsPerCubicMetre(tabulated, WATER_1980)
  if (definedAt60(tabulated.unit) || baseTemperature === '60 degF') {
    return andThen(within(asked, '60 degF', rho), (density60) => baseTemperature === '60 degF'
      ? accepted({ density60, systemDensity: density60 })
      : accepted({ density60, systemDensity: away(asked, '60 degF', density60, -1) }))
  }
  const at15: Outcome<number> = baseTemperature === '15 degC' ? within(asked, '15 degC', rho) : andThen(toBase(asked, '15 degC', rho, 5), (found) => accepted(found.rho))
  return andThen(at15, (systemDensity) => accepted({ systemDensity, density60: away(asked, '15 degC', systemDensity, DEGC_60F - 15) }))
}

/** 60 °F in °C. */
const DEGC_60F = 28 / 1.8

function toBase(asked: Asked, system: System, rhoObs: number, dt: number): Outcome<Extract<Search1980, { end: 'found' }>> {
  const search = searchBase1980(asked.group, asked.alphas[system], system, rhoObs, dt)
  if (search.end === 'found') return accepted(search)
  if (search.end !== 'not-converged') return refused(densityOutside1980(asked.group, system, asked.written, asked.path))
  return refused({ code: 'density-not-converged', path: asked.path, value: asked.written, limit: `${search.passes} passes`, clause: 'ASTM-D1250-80 Volume X' })
}

/** A base density of a system, within the group's range. */
function within(asked: Asked, system: System, rho: number): Outcome<number> {
  const { from, to } = densityRange1980(asked.group, system)
  return rho >= from && rho <= to ? accepted(rho) : refused(densityOutside1980(asked.group, system, asked.written, asked.path))
}

/** A base density of a system at another temperature, dt degrees of the system away. */
function away(asked: Asked, system: System, rho: number, dt: number): number {
  const alpha = asked.alphas[system] ?? expansion1980(zoneAt1980(asked.group, system, rho), rho)
  return rho * vcf1980(roundedExpansion(system, alpha), dt)
}
