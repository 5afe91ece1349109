import { accepted, andThen, refused, type Outcome } from '../refusal/index.ts'
import { psig, WATER_AT_60F } from '../units/index.ts'
import { roundedLine } from '../worksheet/index.ts'
import { correctionOf } from './correction.ts'
import type { ConditionPaths, Conditions, Correction, Factors, Family, FamilyInput, FamilyLiquid, FamilyPaths } from './family.ts'
import { findLightLiquid, type LightLiquid } from './lpg-base.ts'
import { aboveCritical, readLightConditions } from './lpg-limits.ts'
import { lightBaseLines, pressureEffectLines } from './lpg-lines.ts'
import { noEffectPublished, pressureEffect, type PressureEffect } from './lpg-pressure.ts'
import { lightCtlFrom, TABLES, temperatureEntry } from './lpg-tables.ts'
import { readMolarMass } from './lpg-vapour.ts'

/**
 * Light hydrocarbons (liquefied petroleum gas, natural gas liquids): CTL by API MPMS 11.2.4 (Tables 23E to 60E), CPL from the
 * vapour pressure by 11.2.2 and 11.2.5. Base conditions are the base temperature and the vapour pressure there.
 * @source MPMS-11.2.4-2007
 */
export const LIGHT_HYDROCARBONS: Family = {
  editions: ['MPMS-11.2.4-2007'],
  settings: { needs: [], may: ['molarMass'] },
  checkSettings: ({ molarMass }, paths) => molarMass === undefined ? accepted(null) : andThen(readMolarMass(molarMass, paths.molarMass), () => accepted(null)),
  readConditions: readLightConditions,
  findLiquid,
}

function findLiquid(input: FamilyInput, paths: FamilyPaths): Outcome<FamilyLiquid> {
  const { density, baseTemperature } = input
  if (density === undefined) return refused({ code: 'missing-value', path: paths.density, value: '', limit: 'the factors follow from the density', clause: 'MPMS-11.2.4-2007 5.1.1.1' })
  return andThen(findLightLiquid(density, baseTemperature, paths.density), (light) => {
    const conditions = light.reading.observed
    if (conditions === null) return accepted(liquidOf(light, null))
    const there = { temperature: `${paths.density}.temperature`, pressure: `${paths.density}.pressure` }
    return andThen(factorsOf(light, conditions, there), ({ factors }) => accepted(liquidOf(light, { conditions, factors })))
  })
}

function liquidOf(light: LightLiquid, observed: FamilyLiquid['observed']): FamilyLiquid {
  const { reading, baseTemperature, baseDensity, density60, passes } = light
  const { toBase, toCtl } = TABLES[baseTemperature]
  const known = { baseTemperature, baseDensity, density60, stated: reading.observed === null ? reading.density : null, densityUnit: reading.density.unit, water60: WATER_AT_60F, passes, observed }
  return {
    standard: `API MPMS 11.2.4-2007 (GPA TP-27), tables ${toBase} and ${toCtl}`, subgroup: 'two-fluid', ...known,
    lines: lightBaseLines(light, known),
    correct: (conditions, paths) => andThen(factorsOf(light, conditions, paths), (found) => accepted(correctionWith(light, conditions, found))),
  }
}

interface Found { readonly factors: Factors; readonly effect: PressureEffect | null }

/** Factors with the temperature as the tables are entered with it; a finding where there are none. */
function factorsOf(light: LightLiquid, { temperature, pressure }: Conditions, paths: ConditionPaths): Outcome<Found> {
  const { RD60, baseTemperature, baseDensity } = light
  const { t } = temperatureEntry(baseTemperature, temperature)
  const tooHot = aboveCritical(RD60, temperature, t, paths.temperature)
  if (tooHot !== null) return refused(tooHot)
  const ctl = lightCtlFrom(baseTemperature, RD60, t)
  const found = pressure === null ? null : pressureEffect(RD60, t, psig(pressure))
  if (found !== null && !found.ok && pressure !== null) return refused(noEffectPublished(pressure, paths.pressure, found.why))
  const effect = found?.ok === true ? found.effect : null
  const cpl = effect?.cpl ?? 1
  const ctpl = ctl * cpl
  return accepted({ factors: { ctl, cpl, ctpl, density: baseDensity * ctpl }, effect })
}

function correctionWith(light: LightLiquid, conditions: Conditions, { factors, effect }: Found): Correction {
  const { baseTemperature: base } = light
  const { toCtl, temperatureUnit } = TABLES[base]
  const entry = temperatureEntry(base, conditions.temperature).rounded
  const chain = base === '60 degF' ? 'X(t) / X(60 °F)' : `X(t) / X(${base})`
  const above = effect !== null && effect.F !== null
  return correctionOf({
    conditions, factors, pressureClause: 'MPMS-11.2.2',
    between: [
      roundedLine({ symbol: 'tE', name: `Temperature with which Table ${toCtl} is entered`, unit: temperatureUnit, rounded: entry, formula: 't', clause: 'MPMS-11.2.4-2007 3', from: ['t'] }),
      ...(effect === null || conditions.pressure === null ? [] : pressureEffectLines(effect, conditions.pressure.unit)),
    ],
    ctl: { formula: `${chain}, X = ρs1 / {1 + δ [ρs1 / (h2 ρs2) − 1]}`, clause: 'MPMS-11.2.4-2007 5.1.1.3', from: ['RD60', 'tE'] },
    cpl: {
      formula: above ? '1 / [1 − F (P − Pe)]' : '1', clause: 'MPMS-11.2.2', from: above ? ['F', 'P', 'Pe'] : effect === null ? ['P'] : ['P', 'Pe'],
      notes: above ? [] : [effect === null ? 'at its vapour pressure' : 'not above its vapour pressure'],
    },
    ctpl: { clause: 'MPMS-11.2.2', notes: ['rounded from the product of the unrounded factors'] },
  })
}
