import { z } from 'zod'
import { SOURCES } from '../../core/sources.ts'
import {
  BASE_TEMPERATURES, checkSettings, COMMODITIES, EDITIONS, FAMILIES, settingPaths,
  type BaseTemperature, type Commodity, type Edition, type FamilySettings,
} from '../../core/volume-correction/index.ts'
import { withUnit } from '../gauge/usual-units.ts'
import { curveForm, curveFormSchema, curveOf, EMPTY_CURVE, isCurve } from './curve-form.ts'

const text = z.string().max(100)

/** What corrects a liquid, as it is typed: commodity, edition, base, and every setting, whether it applies or not. */
export const liquidSettingsSchema = z.strictObject({
  commodity: z.enum(COMMODITIES), edition: z.enum(EDITIONS), baseTemperature: z.enum(BASE_TEMPERATURES),
  alpha: text, molarMass: text, component: text, content: text, salinity: text, figures: z.enum(['', 'four', 'five']), curve: curveFormSchema,
})
export type LiquidSettings = Readonly<z.infer<typeof liquidSettingsSchema>>
/** A setting that a commodity may ask for. */
export type SettingName = keyof FamilySettings
export type LiquidKind = Pick<LiquidSettings, 'commodity' | 'edition' | 'baseTemperature'>

export const EMPTY_SETTINGS: LiquidSettings = {
  commodity: 'crude', edition: 'MPMS-11.1-2004', baseTemperature: '15 degC', alpha: '', molarMass: '', component: '', content: '', salinity: '', figures: '', curve: EMPTY_CURVE,
}

/** Editions of a commodity, the usual one first. */
export function editionsOf(commodity: Commodity): readonly Edition[] {
  return FAMILIES[commodity].editions.flatMap((key) => EDITIONS.filter((edition) => edition === key))
}

/** An edition as people name it. */
export function editionName(edition: Edition): string {
  return edition === 'LAB-CERTIFICATE' ? SOURCES[edition].title : SOURCES[edition].edition
}

type Probe = Exclude<SettingName, 'curve'>
const PROBES: { readonly [S in Probe]: FamilySettings } = {
  alpha: { alpha: '0' }, molarMass: { molarMass: '0' }, component: { component: '0' }, content: { content: '0' }, salinity: { salinity: '0' }, figures: { figures: 'four' },
}
const PROBED = Object.keys(PROBES) as readonly Probe[]

/** The settings that a commodity has in this edition: those that the core would use. */
export function settingsThatApply({ commodity, edition, baseTemperature }: LiquidKind): ReadonlySet<SettingName> {
  const { needs, may } = FAMILIES[commodity].settings
  const usedByEdition = (name: Probe): boolean => {
    const checked = checkSettings(commodity, { edition, baseTemperature, ...PROBES[name] }, settingPaths(''))
    return checked.ok || !checked.findings.some(({ code, path }) => code === 'value-not-used' && path === name)
  }
  return new Set([...PROBED.filter((name) => (needs.includes(name) || may.includes(name)) && usedByEdition(name)), ...(needs.includes('curve') ? ['curve' as const] : [])])
}

/** Base temperatures for which an edition is made. */
export function basesOf(commodity: Commodity, edition: Edition): readonly BaseTemperature[] {
  const served = BASE_TEMPERATURES.filter((baseTemperature) => {
    const checked = checkSettings(commodity, { edition, baseTemperature }, settingPaths(''))
    return checked.ok || !checked.findings.some(({ path }) => path === 'baseTemperature')
  })
  return served.length > 0 ? served : BASE_TEMPERATURES
}

/** The settings after another commodity or edition was chosen: with an edition and a base temperature that belong to it. */
export function chosen<S extends LiquidKind>(settings: S, { commodity = settings.commodity, edition = settings.edition }: { readonly commodity?: Commodity; readonly edition?: Edition }): S {
  const editions = editionsOf(commodity)
  const kept = editions.includes(edition) ? edition : (editions[0] ?? edition)
  const bases = basesOf(commodity, kept)
  const baseTemperature = bases.includes(settings.baseTemperature) ? settings.baseTemperature : (bases[0] ?? settings.baseTemperature)
  return { ...settings, commodity, edition: kept, baseTemperature }
}

/** The unit that a bare number is given in a setting. */
export function settingUnit(name: SettingName, base: BaseTemperature): string {
  const units: Readonly<Partial<Record<SettingName, string>>> = { alpha: base === '60 degF' ? '/degF' : '/degC', molarMass: 'g/mol', content: '%', salinity: 'PSU' }
  return units[name] ?? ''
}

/** Edition, base and the settings that apply, as the core takes them; what is empty is left out, as is a curve of less than two points. */
export function writtenSettings(settings: LiquidSettings): FamilySettings & Pick<LiquidSettings, 'edition' | 'baseTemperature'> {
  const { edition, baseTemperature, figures, component, curve } = settings
  const applies = settingsThatApply(settings)
  const one = (name: 'alpha' | 'molarMass' | 'content' | 'salinity'): FamilySettings => {
    const typed = settings[name]
    return applies.has(name) && typed.trim() !== '' ? { [name]: withUnit(typed, settingUnit(name, baseTemperature)) } : {}
  }
  return {
    edition, baseTemperature, ...one('alpha'), ...one('molarMass'), ...one('content'), ...one('salinity'),
    ...(applies.has('component') && component !== '' && { component }), ...(applies.has('figures') && figures !== '' && { figures }),
    ...(applies.has('curve') && isCurve(curve) && { curve: curveOf(curve, baseTemperature) }),
  }
}

/** A sheet with the settings of a product. */
export function settingsFrom(from: LiquidKind & FamilySettings): LiquidSettings {
  const { commodity, edition, baseTemperature, alpha = '', molarMass = '', component = '', content = '', salinity = '', figures = '' } = from
  return { commodity, edition, baseTemperature, alpha, molarMass, component, content, salinity, figures, curve: curveForm(from.curve) }
}
