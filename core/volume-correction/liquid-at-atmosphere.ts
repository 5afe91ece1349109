import { accepted, andThen, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import type { Citation } from '../sources.ts'
import { Decimal, WATER_AT_60F, type Temperature } from '../units/index.ts'
import { roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import { NO_COMPRESSIBILITY } from './at-atmosphere.ts'
import { baseDensityIn } from './base-density-lines.ts'
import type { BaseTemperature } from './commodity.ts'
import { correctionOf } from './correction.ts'
import { definedAt60, readingLines, type DensityReading } from './density-reading.ts'
import type { ConditionPaths, Conditions, Factors, FamilyLiquid } from './family.ts'

/** The note on a line whose unrounded value is used further on. */
const CARRIED_ON = 'the unrounded value is used further on'

/** A base temperature as a temperature. */
const BASE: { readonly [B in BaseTemperature]: Temperature } = {
  '60 degF': { text: '60 degF', value: new Decimal(60), unit: 'degF' },
  '15 degC': { text: '15 degC', value: new Decimal(15), unit: 'degC' },
  '20 degC': { text: '20 degC', value: new Decimal(20), unit: 'degC' },
}

/** The base temperature of a product as a temperature. */
export function baseAsTemperature(base: BaseTemperature): Temperature {
  return BASE[base]
}

/** How the density of one liquid under the atmosphere follows its temperature, and how that is written. */
export interface Expansion {
  readonly standard: string
  readonly subgroup: string
  readonly clause: Citation
  /** Formula of CTL in the symbols of its source, with `t` and what else stands on the lines. */
  readonly formula: string
  readonly notes: readonly string[]
  /** Lines of settings, and their symbols, from which CTL is made. */
  readonly settings: readonly WorksheetLine[]
  /** CTL from the base temperature to a temperature, for a base density [kg/m³]. */
  readonly ctl: (baseDensity: number, at: Temperature) => number
  /** Base density from the density at a temperature [kg/m³]. */
  readonly toBase: (density: number, at: Temperature) => number
  /** Formula of {@link toBase} with the symbols of the density that was used and of its temperature. */
  readonly baseFormula: (density: string, t: string) => string
  /** Limits of this liquid within those of its family. */
  readonly within: (at: Temperature, path: string) => Outcome<Temperature>
}

/**
 * A liquid under the atmosphere from a density that was read: as stated at base conditions, or as observed and taken to base.
 * °API gravity and relative density that were stated are of 60 °F, whatever the base temperature.
 * @param expansion how its density follows its temperature
 * @param reading the density as written
 * @param baseTemperature of the product
 * @source COMMON-PRACTICE CTPL = CTL under the atmosphere
 */
export function liquidFromReading(expansion: Expansion, reading: DensityReading, baseTemperature: BaseTemperature): FamilyLiquid {
  const { density, observed, used } = reading
  const at = observed?.temperature ?? (definedAt60(density.unit) ? BASE['60 degF'] : BASE[baseTemperature])
  const statedThere = observed === null && (!definedAt60(density.unit) || baseTemperature === '60 degF')
  const baseDensity = statedThere ? used : expansion.toBase(used, at)
  const symbol = observed === null ? 'ρstated' : observed.hydrometer === null ? 'ρobs' : 'ρhyc'
  const water = `${WATER_AT_60F}`
  const inKg = { 'kg/m3': symbol, 'g/cm3': `1000 ${symbol}`, RD: `${water} ${symbol}`, degAPI: `141.5 / (${symbol} + 131.5) × ${water}` }[density.unit]
  const origin: Origin = {
    formula: statedThere ? inKg : expansion.baseFormula(symbol === 'ρhyc' ? symbol : inKg.includes(' ') ? `(${inKg})` : inKg, observed === null ? '60 °F' : 'tobs'),
    from: [symbol, ...(observed === null ? [] : ['tobs']), ...expansion.settings.map((line) => line.symbol)],
    before: [...expansion.settings, ...readingLines(reading, baseTemperature, expansion.clause, 'COMMON-PRACTICE')],
  }
  const liquid = finished(expansion, baseDensity, baseTemperature, origin, { stated: observed === null ? density : null, densityUnit: density.unit })
  return observed === null ? liquid : { ...liquid, observed: { conditions: observed, factors: factorsOf(expansion, baseDensity, observed.temperature) } }
}

/** Where a base density comes from, on the worksheet. */
export interface Origin { readonly formula: string; readonly from: readonly string[]; readonly before: readonly WorksheetLine[] }

/**
 * A liquid whose base density its own equation or curve gives.
 * @param expansion how its density follows its temperature
 * @param baseDensity as the equation gives it [kg/m³]
 * @param baseTemperature of the product
 * @param origin formula and lines of the base density
 * @source COMMON-PRACTICE CTPL = CTL under the atmosphere
 */
export function liquidOfItself(expansion: Expansion, baseDensity: number, baseTemperature: BaseTemperature, origin: Origin): FamilyLiquid {
  return finished(expansion, baseDensity, baseTemperature, origin, { stated: null, densityUnit: 'kg/m3' })
}

function finished(expansion: Expansion, baseDensity: number, baseTemperature: BaseTemperature, origin: Origin, written: Pick<FamilyLiquid, 'stated' | 'densityUnit'>): FamilyLiquid {
  const { standard, subgroup } = expansion
  const density60 = baseDensity * (baseTemperature === '60 degF' ? 1 : expansion.ctl(baseDensity, BASE['60 degF']))
  const known = { standard, subgroup, baseTemperature, baseDensity, density60, ...written, water60: WATER_AT_60F, observed: null, passes: 0 }
  return {
    ...known,
    lines: [...origin.before, ...baseLines(known, expansion, origin)],
    correct: (conditions, paths) => correct(expansion, baseDensity, conditions, paths),
  }
}

type Known = Pick<FamilyLiquid, 'baseTemperature' | 'baseDensity' | 'density60' | 'stated' | 'densityUnit'>

function baseLines(known: Known, expansion: Expansion, origin: Origin): readonly WorksheetLine[] {
  const { densityUnit, baseTemperature } = known
  const inUnits = densityUnit === 'g/cm3' ? 'g/cm3' : 'kg/m3'
  const base = roundedLine({ symbol: 'ρb', name: `Base density, at ${baseTemperature} under the atmosphere`, unit: inUnits, formula: origin.formula, from: origin.from, clause: expansion.clause, rounded: baseDensityIn(known, inUnits), notes: [CARRIED_ON] })
  const at60 = roundedLine({
    symbol: 'ρ60', name: 'Density at 60 °F under the atmosphere', unit: 'kg/m3', formula: baseTemperature === '60 degF' ? 'ρb' : `ρb × CTL(${baseTemperature} → 60 °F)`,
    from: ['ρb'], clause: expansion.clause, rounded: discriminate('density kg/m3', known.density60), notes: [CARRIED_ON],
  })
  if (!definedAt60(densityUnit)) return [base, at60]
  const words = densityUnit === 'degAPI'
    ? { symbol: 'API60', name: 'API gravity at 60 °F', formula: `141.5 / (ρ60 / ${WATER_AT_60F}) − 131.5` }
    : { symbol: 'RD60', name: 'Relative density 60/60 °F', formula: `ρ60 / ${WATER_AT_60F}` }
  return [base, at60, roundedLine({ ...words, unit: densityUnit, from: ['ρ60'], clause: 'MPMS-11.5', rounded: baseDensityIn(known, densityUnit) })]
}

function factorsOf(expansion: Expansion, baseDensity: number, at: Temperature): Factors {
  const ctl = expansion.ctl(baseDensity, at)
  return { ctl, cpl: 1, ctpl: ctl, density: baseDensity * ctl }
}

function correct(expansion: Expansion, baseDensity: number, conditions: Conditions, paths: ConditionPaths): ReturnType<FamilyLiquid['correct']> {
  return andThen(expansion.within(conditions.temperature, paths.temperature), (temperature) => accepted(correctionOf({
    conditions, factors: factorsOf(expansion, baseDensity, temperature), pressureClause: 'COMMON-PRACTICE',
    ctl: { formula: expansion.formula, clause: expansion.clause, from: ['ρb', 't', ...expansion.settings.map((line) => line.symbol)], notes: expansion.notes },
    cpl: { formula: '1', clause: 'COMMON-PRACTICE', from: ['P'], notes: [NO_COMPRESSIBILITY] },
    ctpl: { clause: expansion.clause },
  })))
}
