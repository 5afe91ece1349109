import { accepted, andThen, refused, type Outcome } from '../refusal/index.ts'
import { degF, psig, WATER_AT_60F } from '../units/index.ts'
import { baseDensityLines } from './base-density-lines.ts'
import { findBaseLiquid, type FoundLiquid } from './base-liquid.ts'
import type { Group } from './commodity.ts'
import { WATER_1980 } from './edition-1980.ts'
import { factorsAt } from './factors.ts'
import type { Family, FamilyInput, FamilyLiquid, FamilyPaths, ProductSettings, SettingPaths } from './family.ts'
import { readConditions1980, readExpansion1980, tooHot1980 } from './limits-1980.ts'
import { readConditions, readExpansion } from './limits.ts'
import { baseLines1980, correction1980, factors1980, standard1980 } from './lines-1980.ts'
import { correctionAt } from './petroleum-correction.ts'
import { findLiquid1980 } from './tables-1980.ts'

const WORDS: { readonly [G in Group]: string } = { crude: 'crude oils', refined: 'refined products', lube: 'lubricating oils', special: 'special applications' }

/**
 * The family of a petroleum group: API MPMS 11.1 of 2004, with its addendum of 2019, and the tables of 1980.
 * @param group A crude, B refined, C special, D lubricating
 * @source MPMS-11.1-2004
 * @source ASTM-D1250-80
 */
export function petroleum(group: Group): Family {
  return {
    editions: ['MPMS-11.1-2004', 'MPMS-11.1-2019', 'ASTM-D1250-80'],
    settings: { needs: group === 'special' ? ['alpha'] : [], may: ['figures'] },
    checkSettings,
    readConditions: (written, paths, edition) => edition === 'ASTM-D1250-80' ? readConditions1980(written, paths) : readConditions(written, paths),
    findLiquid: (input, paths) => input.edition === 'ASTM-D1250-80' ? byTables(group, input, paths) : byEquations(group, input, paths),
  }
}

function checkSettings({ alpha, figures, edition }: ProductSettings, paths: SettingPaths): Outcome<null> {
  if (figures !== undefined && edition !== 'ASTM-D1250-80') {
    return refused({ code: 'value-not-used', path: paths.figures, value: figures, limit: 'only the tables of 1980 are read to four or five figures', clause: 'ASTM-D1250-80' })
  }
  if (alpha === undefined) return accepted(null)
  return andThen(edition === 'ASTM-D1250-80' ? readExpansion1980(alpha, paths.alpha) : readExpansion(alpha, paths.alpha), () => accepted(null))
}

function byEquations(group: Group, input: FamilyInput, paths: FamilyPaths): Outcome<FamilyLiquid> {
  const { density, alpha, baseTemperature } = input
  const edition = input.edition === 'MPMS-11.1-2019' ? 'MPMS-11.1-2019' : 'MPMS-11.1-2004'
  if (density === undefined) return refused({ code: 'missing-value', path: paths.density, value: '', limit: 'the factors follow from the density', clause: 'MPMS-11.1-2004 11.1.6.1' })
  const found = findBaseLiquid({ commodity: group, alpha, density, baseTemperature }, { density: paths.density, alpha: paths.settings.alpha })
  return andThen(found, (one) => accepted(liquidOf(group, one, edition)))
}

function liquidOf(group: Group, found: FoundLiquid, edition: 'MPMS-11.1-2004' | 'MPMS-11.1-2019'): FamilyLiquid {
  const { liquid, reading, passes } = found
  const { observed } = reading
  const words = WORDS[group]
  return {
    standard: `API MPMS 11.1-${edition === 'MPMS-11.1-2019' ? '2004 with Addendum 2 (2019)' : '2004'}, ${words}${group === 'refined' ? ` (${liquid.subgroup})` : ''}`,
    subgroup: liquid.subgroup, baseTemperature: liquid.baseTemperature, baseDensity: liquid.baseDensity, density60: liquid.density60,
    stated: liquid.stated, densityUnit: reading.density.unit, water60: WATER_AT_60F, passes,
    observed: observed === null ? null : { conditions: observed, factors: factorsAt(liquid, degF(observed.temperature), observed.pressure === null ? 0 : psig(observed.pressure)) },
    lines: baseDensityLines(found),
    correct: ({ temperature, pressure }) => accepted(correctionAt(liquid, temperature, pressure, edition)),
  }
}

function byTables(group: Group, input: FamilyInput, paths: FamilyPaths): Outcome<FamilyLiquid> {
  return andThen(findLiquid1980(group, input, paths), (liquid) => {
    const { reading, system, systemDensity, alpha, tabulated, baseDensity, density60, baseTemperature, search, zone } = liquid
    const alpha60 = system === '60 degF' ? alpha : alpha / 1.8
    const tooHot = reading.observed === null ? null : tooHot1980(group, system, systemDensity, alpha60, reading.observed.temperature, `${paths.density}.temperature`)
    if (tooHot !== null) return refused(tooHot)
    return accepted({
      standard: standard1980(liquid), subgroup: zone.subgroup, baseTemperature, baseDensity, density60, stated: tabulated, densityUnit: tabulated.unit,
      water60: WATER_1980, passes: search?.passes ?? 0, lines: baseLines1980(liquid),
      observed: reading.observed === null ? null : { conditions: reading.observed, factors: factors1980(liquid, reading.observed.temperature) },
      correct: (conditions, at) => {
        const hot = tooHot1980(group, system, systemDensity, alpha60, conditions.temperature, at.temperature)
        return hot === null ? accepted(correction1980(liquid, conditions, input.figures ?? 'four')) : refused(hot)
      },
    })
  })
}
