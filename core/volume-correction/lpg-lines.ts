import { discriminate } from '../rounding/index.ts'
import { KPA_PER_PSI, WATER_AT_60F, type PressureUnit } from '../units/index.ts'
import { roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import { baseDensityIn } from './base-density-lines.ts'
import { CARRIED_ON } from './condition-lines.ts'
import { readingLines } from './density-reading.ts'
import type { FamilyLiquid } from './family.ts'
import type { LightLiquid } from './lpg-base.ts'
import type { PressureEffect } from './lpg-pressure.ts'
import { TABLES } from './lpg-tables.ts'

const CLAUSE = 'MPMS-11.2.4-2007 5.1.2.3'
const ROUNDED_ON = 'the rounded value enters the table (MPMS-11.2.4-2007 3)'

/**
 * Worksheet lines of a light hydrocarbon from its density as written: those of the reading, then ρ60, ρb and RD60, with
 * which the tables of CTL are entered.
 * @param liquid as found
 * @param printed its densities as they are printed
 * @source MPMS-11.2.4-2007 5.1.2.3
 */
export function lightBaseLines(liquid: LightLiquid, printed: Pick<FamilyLiquid, 'stated' | 'density60' | 'baseDensity'>): readonly WorksheetLine[] {
  const { reading, baseTemperature: base, passes } = liquid
  const { unit } = reading.density
  const { toBase } = TABLES[base]
  const used = reading.observed === null ? 'ρstated' : reading.observed.hydrometer === null ? 'ρobs' : 'ρhyc'
  const from = reading.observed === null ? [used] : [used, 'tobs', 'Pobs']
  const inUnits = unit === 'g/cm3' ? 'g/cm3' : 'kg/m3'
  const searched = passes > 0 ? [`found in ${passes} ${passes === 1 ? 'pass' : 'passes'}`] : []
  const written = { 'kg/m3': used, 'g/cm3': `1000 ${used}`, RD: `${WATER_AT_60F} ${used}`, degAPI: `141.5 / (${used} + 131.5) × ${WATER_AT_60F}` }[unit]
  const direct = passes === 0 && reading.observed === null
  return [
    ...readingLines(reading, base, 'MPMS-11.1-2004 11.1.5.1', 'MPMS-11.2.2'),
    roundedLine({ symbol: 'ρ60', name: 'Density at 60 °F, at its vapour pressure', unit: 'kg/m3', rounded: discriminate('density kg/m3', liquid.density60), formula: direct ? written : `${WATER_AT_60F} RD60, RD60 such that RD60 CTL CPL is that of ${used} (Table ${toBase})`, clause: direct ? 'MPMS-11.1-2004 11.1.5.1' : CLAUSE, from, notes: [CARRIED_ON, ...searched] }),
    roundedLine({ symbol: 'ρb', name: `Base density, at ${base} and its vapour pressure`, unit: inUnits, rounded: baseDensityIn(printed, inUnits), formula: printed.stated?.unit === inUnits ? 'ρstated' : base === '60 degF' ? 'ρ60' : `ρ60 × CTL(60 °F → ${base})`, clause: CLAUSE, from: [printed.stated?.unit === inUnits ? 'ρstated' : 'ρ60'], notes: base === '60 degF' ? [CARRIED_ON] : [ROUNDED_ON] }),
    base === '60 degF'
      ? roundedLine({ symbol: 'RD60', name: 'Relative density 60/60 °F', unit: 'RD', rounded: baseDensityIn(printed, 'RD'), formula: `ρ60 / ${WATER_AT_60F}`, clause: 'MPMS-11.1-2004 11.1.5.1', from: ['ρ60'], notes: [ROUNDED_ON] })
      : roundedLine({ symbol: 'RD60', name: 'Relative density 60/60 °F', unit: 'RD', rounded: discriminate('density RD', liquid.RD60), formula: `RD60 such that ${WATER_AT_60F} RD60 CTL(60 °F → ${base}) = ρb`, clause: CLAUSE, from: ['ρb'], notes: [CARRIED_ON] }),
  ]
}

/** The gauge unit of a pressure, and how many of it make a psi. */
const GAUGE = {
  psi: { unit: 'psi', perPsi: 1 }, psia: { unit: 'psi', perPsi: 1 }, kPa: { unit: 'kPa', perPsi: KPA_PER_PSI },
  kPaa: { unit: 'kPa', perPsi: KPA_PER_PSI }, bar: { unit: 'bar', perPsi: KPA_PER_PSI / 100 }, bara: { unit: 'bar', perPsi: KPA_PER_PSI / 100 },
} as const satisfies { readonly [U in PressureUnit]: { readonly unit: string; readonly perPsi: number } }

/**
 * Lines of vapour pressure and compressibility in the unit of the stated pressure: Pe, and F where the pressure is above it.
 * @param effect of the pressure
 * @param unit in which the pressure was written
 * @source MPMS-11.2.5
 * @source MPMS-11.2.2
 */
export function pressureEffectLines(effect: PressureEffect, unit: PressureUnit): readonly WorksheetLine[] {
  const gauge = GAUGE[unit]
  const vapour = roundedLine({ symbol: 'Pe', name: 'Equilibrium vapour pressure, gauge', unit: gauge.unit, rounded: discriminate(`vapour pressure ${gauge.unit}`, effect.vapour * gauge.perPsi), formula: 'exp[A + B / (t + 443)] − 14.696 psi', clause: 'MPMS-11.2.5', from: ['RD60', 't'], notes: [CARRIED_ON] })
  if (effect.F === null) return [vapour]
  return [vapour, roundedLine({ symbol: 'F', name: 'Compressibility factor', unit: `1e-5/${gauge.unit}`, rounded: discriminate(`F 1e-5/${gauge.unit}`, (effect.F * 1e5) / gauge.perPsi), formula: '1 / [A + B (P − Pe)]', clause: 'MPMS-11.2.2', from: ['RD60', 't', 'P', 'Pe'], notes: [CARRIED_ON] })]
}
