import { allOf, accepted, eachOnce, refused, type Finding, type Outcome } from '../refusal/index.ts'
import type { SourceKey } from '../sources.ts'
import { BIODIESEL_FAMILY } from './biodiesel-family.ts'
import { CHEMICAL_FAMILY } from './chemicals.ts'
import type { Commodity } from './commodity.ts'
import { ETHANOL_FAMILY } from './ethanol-family.ts'
import type { ConditionPaths, Conditions, Family, FamilyInput, FamilyLiquid, FamilyPaths, ProductSettings, SettingName, SettingPaths, WrittenConditions } from './family.ts'
import { LIGHT_HYDROCARBONS } from './lpg.ts'
import { petroleum } from './petroleum.ts'
import { CURVE_FAMILY } from './product-curve-family.ts'
import { WATER_FAMILY } from './water-family.ts'

/** The family of every commodity: one without a place here does not compile. */
export const FAMILIES: { readonly [C in Commodity]: Family } = {
  crude: petroleum('crude'), refined: petroleum('refined'), lube: petroleum('lube'), special: petroleum('special'),
  lpg: LIGHT_HYDROCARBONS, chemical: CHEMICAL_FAMILY, ethanol: ETHANOL_FAMILY, biodiesel: BIODIESEL_FAMILY, curve: CURVE_FAMILY, water: WATER_FAMILY,
}

/** The edition that is taken where none is named: 2004 for petroleum. */
export function usualEdition(commodity: Commodity): SourceKey {
  return FAMILIES[commodity].editions[0]
}

/** What each setting is, for a finding that it is missing or not used. */
const SETTING_WORDS: { readonly [S in SettingName]: { readonly needed: string; readonly of: string; readonly notUsed?: (commodity: Commodity) => string } } = {
  alpha: {
    needed: 'a special application needs its thermal expansion factor at 60 °F, as 0.000510 /degF', of: 'special',
    notUsed: (commodity) => `the expansion factor of ${commodity} follows from its density; leave it out, or choose the commodity special`,
  },
  molarMass: { needed: 'vapour of a light hydrocarbon is counted by its molar mass, as 44.1 g/mol', of: 'lpg' },
  component: { needed: 'the name of a tabulated substance, as benzene', of: 'chemical' },
  content: { needed: 'the share of ethanol by mass, as 99.5 %', of: 'ethanol' },
  salinity: { needed: 'practical salinity, as 35 PSU', of: 'water' },
  curve: { needed: 'density against temperature from a certificate', of: 'curve' },
  figures: { needed: 'four or five', of: 'the tables of 1980' },
}

/**
 * Whether edition and settings fit a commodity: what it needs is there, nothing stands there that would not be used, and
 * each setting is within its limits. All findings at once.
 * Refuses `missing-value`, `value-not-used`, `out-of-range` for an edition that the commodity does not have, and what the
 * family refuses of its settings.
 * @param commodity which family
 * @param input settings, edition and base temperature
 * @param paths where each stood
 * @source HOUSE product
 */
export function checkSettings(commodity: Commodity, input: ProductSettings, paths: SettingPaths): Outcome<null> {
  const family = FAMILIES[commodity]
  const findings: Finding[] = []
  if (!family.editions.includes(input.edition)) {
    findings.push({ code: 'out-of-range', path: paths.edition, value: input.edition, limit: family.editions.join(' or '), clause: 'HOUSE product' })
  }
  for (const name of SETTING_NAMES) {
    const { needed, of, notUsed } = SETTING_WORDS[name]
    const given = input[name]
    const clause = name === 'alpha' ? 'MPMS-11.1-2004 11.1.6.1' : 'HOUSE product'
    if (given === undefined && family.settings.needs.includes(name)) findings.push({ code: 'missing-value', path: paths[name], value: '', limit: needed, clause })
    if (given !== undefined && !family.settings.needs.includes(name) && !family.settings.may.includes(name)) {
      findings.push({ code: 'value-not-used', path: paths[name], value: typeof given === 'string' ? given : given.certificate, limit: notUsed?.(commodity) ?? `it belongs to ${of}, not to ${commodity}; leave it out`, clause })
    }
  }
  const read = family.checkSettings(input, paths)
  const all = eachOnce([...findings, ...(read.ok ? [] : read.findings)])
  return all.length > 0 ? refused(...all) : accepted(null)
}

const SETTING_NAMES = Object.keys(SETTING_WORDS) as readonly SettingName[]

/**
 * The liquid that was written, by the family of its commodity and the edition that is named.
 * Refuses what {@link checkSettings} and the family refuse, each once.
 * @param commodity which family
 * @param input density and settings as written
 * @param paths where each stood
 * @source MPMS-11.1-2004 11.1.6.2
 */
export function findLiquid(commodity: Commodity, input: FamilyInput, paths: FamilyPaths): Outcome<FamilyLiquid> {
  const read = allOf<{ settings: null; liquid: FamilyLiquid }>({
    settings: checkSettings(commodity, input, paths.settings), liquid: FAMILIES[commodity].findLiquid(input, paths),
  })
  return read.ok ? accepted(read.value.liquid) : refused(...eachOnce(read.findings))
}

/** Temperature and pressure within the limits of a commodity's family. Refuses what the family refuses. @source MPMS-11.1-2004 11.1.3 */
export function readConditionsOf(commodity: Commodity, edition: SourceKey, written: WrittenConditions, paths: ConditionPaths): Outcome<Conditions> {
  return FAMILIES[commodity].readConditions(written, paths, edition)
}

/** Where the settings stood, below one path: `product.alpha`; `alpha` where the path is empty. */
export function settingPaths(path: string): SettingPaths {
  const at = (name: string): string => (path === '' ? name : `${path}.${name}`)
  return {
    alpha: at('alpha'), molarMass: at('molarMass'), component: at('component'), content: at('content'), salinity: at('salinity'), curve: at('curve'),
    figures: at('figures'), edition: at('edition'), baseTemperature: at('baseTemperature'),
  }
}
