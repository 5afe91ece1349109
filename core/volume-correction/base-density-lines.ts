import { discriminate, type Rounded } from '../rounding/index.ts'
import { densityIn, WATER_AT_60F, writtenDigits, type DensityUnit } from '../units/index.ts'
import { inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import type { FoundLiquid } from './base-liquid.ts'
import { CARRIED_ON } from './condition-lines.ts'
import { definedAt60, readingLines } from './density-reading.ts'
import type { FamilyLiquid } from './family.ts'

/**
 * Base density in a unit, rounded. In kg/m³ and g/cm³ it is the density at the product's base temperature; °API gravity
 * and relative density are defined at 60 °F, so in them it is the density at 60 °F whatever the base temperature.
 * @param liquid a liquid whose base density is known
 * @param unit unit in which it is to be printed
 * @source MPMS-11.1-2004 11.1.5.1
 */
export function baseDensityIn(liquid: Pick<FamilyLiquid, 'stated' | 'density60' | 'baseDensity'> & Partial<Pick<FamilyLiquid, 'water60'>>, unit: DensityUnit): Rounded {
  // as stated, a density keeps its digits: there and back through kg/m³ a half would not stay a half
  if (liquid.stated?.unit === unit) return discriminate(`density ${unit}`, liquid.stated.value)
  const density = definedAt60(unit) ? liquid.density60 : liquid.baseDensity
  return discriminate(`density ${unit}`, densityIn(density, unit, liquid.water60))
}

/**
 * Worksheet lines from the density as written to the base density and the expansion factor, of the symbols
 * ρobs or ρstated, tobs, Pobs, HYC, ρhyc, ρ60, ρb, API60 or RD60, α60.
 * @param found the liquid and how its base density was found
 * @source MPMS-11.1-2004 11.1.6.2
 */
export function baseDensityLines(found: FoundLiquid): readonly WorksheetLine[] {
  return [...readingLines(found.reading, found.liquid.baseTemperature, 'MPMS-11.1-2004 11.1.5.1'), density60Line(found), ...baseLines(found), expansionLine(found)]
}

function density60Line({ reading, liquid, passes }: FoundLiquid): WorksheetLine {
  const { observed, density } = reading
  const words = { symbol: 'ρ60', name: 'Density at 60 °F and 0 psig', unit: 'kg/m3', rounded: discriminate('density kg/m3', liquid.density60), notes: [CARRIED_ON] }
  if (passes > 0) {
    const used = observed === null ? 'ρstated' : observed.hydrometer === null ? 'ρobs' : 'ρhyc'
    const at = observed === null ? liquid.baseTemperature : 'tobs, Pobs'
    const from = observed === null ? ['ρstated'] : [used, 'tobs', 'Pobs']
    return roundedLine({ ...words, formula: `ρ60 such that ρ60 CTL CPL = ${used} at ${at}`, clause: observed === null ? 'MPMS-11.1-2004 11.1.7.1' : 'MPMS-11.1-2004 11.1.6.2', from, notes: [CARRIED_ON, `found in ${passes} ${passes === 1 ? 'pass' : 'passes'}`] })
  }
  const formula = { 'kg/m3': 'ρstated', 'g/cm3': '1000 ρstated', RD: `${WATER_AT_60F} ρstated`, degAPI: `141.5 / (ρstated + 131.5) × ${WATER_AT_60F}` }[density.unit]
  return roundedLine({ ...words, formula, clause: 'MPMS-11.1-2004 11.1.5.1', from: ['ρstated'] })
}

function baseLines({ reading, liquid }: FoundLiquid): readonly WorksheetLine[] {
  const { unit } = reading.density
  const at = liquid.baseTemperature
  const statedThere = liquid.stated !== null && !definedAt60(unit)
  const inUnits = unit === 'g/cm3' ? 'g/cm3' : 'kg/m3'
  const base = roundedLine({
    symbol: 'ρb', name: `Base density, at ${at} and 0 psig`, unit: inUnits, rounded: baseDensityIn(liquid, inUnits), notes: [CARRIED_ON],
    formula: statedThere ? 'ρstated' : at === '60 degF' ? 'ρ60' : `ρ60 × CTL(60 °F → ${at})`,
    clause: at === '60 degF' ? 'MPMS-11.1-2004 11.1.6.2' : 'MPMS-11.1-2004 11.1.7.2', from: [statedThere ? 'ρstated' : 'ρ60'],
  })
  if (!definedAt60(unit)) return [base]
  const words = unit === 'degAPI'
    ? { symbol: 'API60', name: 'API gravity at 60 °F', formula: `141.5 / (ρ60 / ${WATER_AT_60F}) − 131.5` }
    : { symbol: 'RD60', name: 'Relative density 60/60 °F', formula: `ρ60 / ${WATER_AT_60F}` }
  return [base, roundedLine({ ...words, unit, ...(liquid.stated === null ? {} : { formula: 'ρstated' }), rounded: baseDensityIn(liquid, unit), clause: 'MPMS-11.1-2004 11.1.5.1', from: [liquid.stated === null ? 'ρ60' : 'ρstated'] })]
}

function expansionLine({ expansion, liquid }: FoundLiquid): WorksheetLine {
  const words = { symbol: 'α60', name: 'Thermal expansion factor at 60 °F' }
  if (expansion !== null) return inputLine({ ...words, value: writtenDigits(expansion), unit: expansion.unit, clause: 'MPMS-11.1-2004 11.1.6.1', notes: ['given for a special application'] })
  return roundedLine({ ...words, unit: '/degF', formula: `(K0/ρ* + K1)/ρ* + K2, coefficients of ${liquid.subgroup}`, clause: 'MPMS-11.1-2004 11.1.6.1', from: ['ρ60'], rounded: discriminate('alpha60 /degF', liquid.expansion60), notes: [CARRIED_ON] })
}
