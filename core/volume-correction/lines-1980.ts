import { discriminate, type Discriminated } from '../rounding/index.ts'
import type { Citation } from '../sources.ts'
import { degF, writtenDigits } from '../units/index.ts'
import { roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import type { BaseTemperature, Group } from './commodity.ts'
import { correctionOf } from './correction.ts'
import { definedAt60, readingLines } from './density-reading.ts'
import { vcf1980, WATER_1980, type System } from './edition-1980.ts'
import type { Conditions, Correction, Factors } from './family.ts'
import { COLDEST_1980 } from './limits-1980.ts'
import { fromBase1980, type Liquid1980 } from './tables-1980.ts'

const LETTER: { readonly [G in Group]: string } = { crude: 'A', refined: 'B', special: 'C', lube: 'D' }

/** Numbers of the odd table (observed → base) and of the even table (factor) by base temperature and unit of the density. */
function tableNumbers(baseTemperature: BaseTemperature, unit: Liquid1980['tabulated']['unit']): { readonly odd: number; readonly even: number } {
  const odd = unit === 'degAPI' ? 5 : unit === 'RD' ? 23 : { '60 degF': 23, '15 degC': 53, '20 degC': 59 }[baseTemperature]
  const even = { '60 degF': unit === 'degAPI' ? 6 : 24, '15 degC': 54, '20 degC': 60 }[baseTemperature]
  return { odd, even }
}

/** Standard, tables and zone, as tickets print them: `ASTM D1250-80, Tables 53B and 54B (gasoline)`. */
export function standard1980({ group, baseTemperature, tabulated, search, zone }: Liquid1980): string {
  const { odd, even } = tableNumbers(baseTemperature, tabulated.unit)
  const letter = LETTER[group]
  const through = baseTemperature === '20 degC' ? ', through 15 °C' : ''
  return `ASTM D1250-80, ${search === null ? 'Table' : `Tables ${odd}${letter} and`} ${even}${letter} (${zone.subgroup})${through}`
}

/**
 * Worksheet lines from the density as written to the base density and α, of the symbols of the reading, then API60 or RD60,
 * ρ60, ρ15, ρb, and α60 or α15; those that are not needed are left out.
 * @source ASTM-D1250-80 Tables 3, 5, 23, 51, 53, 59
 */
export function baseLines1980(liquid: Liquid1980): readonly WorksheetLine[] {
  const { reading, baseTemperature, tabulated } = liquid
  return [
    ...readingLines(reading, baseTemperature, 'ASTM-D1250-80', 'ASTM-D1250-80'),
    ...(definedAt60(tabulated.unit) ? linesFrom60(liquid, tabulated.unit) : linesFromBase(liquid)),
    expansionLine(liquid),
  ]
}

const ENTERED = 'the next table is entered with the rounded value'
const CARRIED = 'the unrounded value is used further on'

/** How the odd table's result is written: what it was found from, its clause and its notes; or that it was stated. */
function oddTable({ reading, search, group, baseTemperature, tabulated }: Liquid1980, symbol: string): { readonly formula: string; readonly clause: Citation; readonly from: readonly string[]; readonly notes: readonly string[] } {
  if (search === null) return { formula: 'ρstated', clause: 'ASTM-D1250-80', from: ['ρstated'], notes: [] }
  const used = reading.observed?.hydrometer === null ? 'ρobs' : 'ρhyc'
  const { odd } = tableNumbers(baseTemperature, tabulated.unit)
  return {
    formula: `${symbol} such that ρ VCF(tobs) = ${used}`, clause: `ASTM-D1250-80 Table ${odd}${LETTER[group]}`, from: [used, 'tobs'],
    notes: [ENTERED, `found in ${search.passes} ${search.passes === 1 ? 'pass' : 'passes'}`],
  }
}

function linesFrom60(liquid: Liquid1980, unit: 'degAPI' | 'RD'): readonly WorksheetLine[] {
  const { tabulated, density60, systemDensity, baseDensity, baseTemperature } = liquid
  const symbol = unit === 'degAPI' ? 'API60' : 'RD60'
  const lines = [
    roundedLine({ symbol, name: unit === 'degAPI' ? 'API gravity at 60 °F' : 'Relative density 60/60 °F', unit, rounded: discriminate(`density ${unit}`, tabulated.value), ...oddTable(liquid, symbol) }),
    density('ρ60', 'Density at 60 °F', density60, unit === 'degAPI' ? `141.5 / (API60 + 131.5) × ${WATER_1980}` : `RD60 × ${WATER_1980}`, 'ASTM-D1250-80 Table 3', [symbol]),
  ]
  if (baseTemperature === '60 degF') return [...lines, density('ρb', 'Base density, at 60 degF', baseDensity, 'ρ60', 'ASTM-D1250-80', ['ρ60'])]
  const at15 = density(baseTemperature === '15 degC' ? 'ρb' : 'ρ15', 'Density at 15 °C', systemDensity, 'ρ60 × VCF(60 °F → 59 °F)', 'ASTM-D1250-80 Table 3', ['ρ60'])
  return baseTemperature === '15 degC' ? [...lines, at15] : [...lines, at15, density('ρb', 'Base density, at 20 degC', baseDensity, 'ρ15 × VCF(15 °C → 20 °C)', 'ASTM-D1250-80 Table 54', ['ρ15'])]
}

function linesFromBase(liquid: Liquid1980): readonly WorksheetLine[] {
  const { tabulated, density60, systemDensity, baseTemperature } = liquid
  const unit = tabulated.unit === 'g/cm3' ? 'g/cm3' : 'kg/m3'
  const base = roundedLine({ symbol: 'ρb', name: `Base density, at ${baseTemperature}`, unit, rounded: discriminate(`density ${unit}`, tabulated.value), ...oddTable(liquid, 'ρb') })
  if (baseTemperature === '60 degF') return [base, density('ρ60', 'Density at 60 °F', density60, 'ρb', 'ASTM-D1250-80', ['ρb'])]
  const at15 = baseTemperature === '20 degC' ? [density('ρ15', 'Density at 15 °C', systemDensity, 'ρ15 such that ρ15 VCF(15 °C → 20 °C) = ρb', 'ASTM-D1250-80 Table 53', ['ρb'])] : []
  const from = baseTemperature === '20 degC' ? 'ρ15' : 'ρb'
  return [base, ...at15, density('ρ60', 'Density at 60 °F', density60, `${from} × VCF(15 °C → 60 °F)`, 'ASTM-D1250-80 Table 51', [from])]
}

function density(symbol: string, name: string, value: number, formula: string, clause: Citation, from: readonly string[]): WorksheetLine {
  return roundedLine({ symbol, name, unit: 'kg/m3', rounded: discriminate('density kg/m3', value), formula, clause, from, notes: [CARRIED] })
}

const ALPHA: { readonly [S in System]: { readonly symbol: string; readonly name: string; readonly unit: string; readonly quantity: Discriminated; readonly rho: string } } = {
  '60 degF': { symbol: 'α60', name: 'Thermal expansion factor at 60 °F', unit: '/degF', quantity: 'alpha60 /degF', rho: 'ρ60' },
  '15 degC': { symbol: 'α15', name: 'Thermal expansion factor at 15 °C', unit: '/degC', quantity: 'alpha15 /degC', rho: 'ρ15' },
}

function expansionLine({ expansion, system, alphaUnrounded, zone, group, baseTemperature, tabulated }: Liquid1980): WorksheetLine {
  const { symbol, name, unit, quantity } = ALPHA[system]
  const rho = baseTemperature === '15 degC' ? 'ρb' : ALPHA[system].rho
  const { even } = tableNumbers(baseTemperature, tabulated.unit)
  const words = expansion === null
    ? { formula: zone.K2 === 0 ? `${zone.K0}/${rho}² + ${zone.K1}/${rho}` : `${zone.K2} + ${zone.K0}/${rho}²`, from: [rho], notes: [`coefficients of ${zone.subgroup}`, 'rounded to 7 decimals before it is used'] }
    : { formula: `${writtenDigits(expansion)} ${expansion.unit}`, from: [], notes: ['given for a special application'] }
  return roundedLine({ symbol, name, unit, clause: `ASTM-D1250-80 Table ${even}${LETTER[group]}`, rounded: discriminate(quantity, alphaUnrounded), ...words })
}

/** Unrounded factors at a temperature, by the even table. @source ASTM-D1250-80 Tables 6, 24, 54, 60 @checked d1250-80/54B/710/-39.3 and following */
export function factors1980({ alpha, system, vcfToBase, baseDensity }: Liquid1980, temperature: Conditions['temperature']): Factors {
  const ctl = vcf1980(alpha, fromBase1980(system, temperature)) / vcfToBase
  return { ctl, cpl: 1, ctpl: ctl, density: baseDensity * ctl }
}

/**
 * The factor of the even table, rounded once: four decimals as printed; or five figures, 0.98765 and 1.0123, as Volume X
 * gives it for computers.
 * @param figures four where nothing is said
 * @source ASTM-D1250-80 printed tables
 */
export function correction1980(liquid: Liquid1980, conditions: Conditions, figures: 'four' | 'five'): Correction {
  const factors = factors1980(liquid, conditions.temperature)
  const { symbol } = ALPHA[liquid.system]
  const quantity = figures === 'five' && factors.ctl < 1 ? 'VCF 5 decimals' : 'VCF 4 decimals'
  const clause: Citation = `ASTM-D1250-80 Table ${tableNumbers(liquid.baseTemperature, liquid.tabulated.unit).even}${LETTER[liquid.group]}`
  const base = liquid.system === '60 degF' ? '60 °F' : '15 °C'
  const vcf = `exp[−${symbol} Δt (1 + 0.8 ${symbol} Δt)], Δt = t − ${base}`
  const cold = degF(conditions.temperature) < COLDEST_1980.printed.degF ? ['colder than the printed tables of 1980 (0 °F, −18 °C): by the same equation'] : []
  return correctionOf({
    conditions, factors, pressureClause: 'ASTM-D1250-80', rounding: { ctl: quantity, cpl: 'CPL', ctpl: quantity },
    ctl: { formula: liquid.baseTemperature === '20 degC' ? `VCF(15 °C → t) / VCF(15 °C → 20 °C), VCF = ${vcf}` : vcf, clause, from: [symbol, 't'], notes: cold },
    cpl: { formula: '1', clause: 'ASTM-D1250-80', from: [], notes: ['the tables of 1980 do not correct for pressure'] },
    ctpl: { clause },
  })
}
