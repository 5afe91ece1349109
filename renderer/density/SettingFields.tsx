import type { ReactNode } from 'react'
import { BASE_TEMPERATURES, CHEMICAL_NAMES, CHEMICALS, COMMODITIES } from '../../core/volume-correction/index.ts'
import { withUnit } from '../gauge/usual-units.ts'
import { SelectField, TextField } from '../parts/Field.tsx'
import { OneOf } from '../tanks/OneOf.tsx'
import { words } from '../words/en.ts'
import { basesOf, chosen, editionName, editionsOf, settingsThatApply, settingUnit, type LiquidSettings, type SettingName } from './liquid-settings.ts'

interface SettingFieldsProps {
  readonly ids: string
  readonly settings: LiquidSettings
  /** Settings that are not asked for here although the commodity has them. */
  readonly without?: readonly SettingName[]
  readonly errors: ReadonlyMap<string, string>
  readonly onChange: (change: Partial<LiquidSettings>) => void
}

/** What corrects a liquid: commodity, edition, base, and the settings that the two ask for, no other. */
export function SettingFields({ ids, settings, without = [], errors, onChange }: SettingFieldsProps): ReactNode {
  const t = words.density.settings
  const { commodity, edition, baseTemperature } = settings
  const applies = settingsThatApply(settings)
  const has = (name: SettingName): boolean => applies.has(name) && !without.includes(name)
  const bases = basesOf(commodity, edition)
  const written = (name: 'alpha' | 'molarMass' | 'content' | 'salinity', hint: string): ReactNode => has(name) && (
    <TextField
      id={`${ids}-${name}`} label={t[name]} measured value={settings[name]} placeholder={hint} error={errors.get(`${ids}-${name}`)} onChange={(value) => onChange({ [name]: value })}
      onBlur={() => onChange({ [name]: withUnit(settings[name], settingUnit(name, baseTemperature)) })}
    />
  )
  const { hints } = words.density
  return (
    <>
      <OneOf id={`${ids}-commodity`} label={t.commodity} value={commodity} of={COMMODITIES} say={(one) => words.yard.commodities[one]} onChange={(one) => onChange(chosen(settings, { commodity: one }))} />
      <div className="setting-edition"><SelectField
        id={`${ids}-edition`} label={t.edition} value={edition} error={errors.get(`${ids}-edition`)} choices={editionsOf(commodity).map((value) => ({ value, label: editionName(value) }))}
        onChange={(value) => onChange(chosen(settings, { edition: editionsOf(commodity).find((one) => one === value) ?? edition }))}
      /></div>
      <SelectField
        id={`${ids}-baseTemperature`} label={t.baseTemperature} value={baseTemperature} error={errors.get(`${ids}-baseTemperature`)} choices={bases.map((value) => ({ value, label: value }))}
        onChange={(value) => onChange({ baseTemperature: BASE_TEMPERATURES.find((one) => one === value) ?? baseTemperature })}
      />
      {written('alpha', baseTemperature === '60 degF' ? hints.alpha['/degF'] : hints.alpha['/degC'])}
      {written('molarMass', `${hints.molarMass}, ${words.density.optional}`)}
      {has('component') && (
        <SelectField id={`${ids}-component`} label={t.component} value={settings.component} placeholder={words.density.choose} error={errors.get(`${ids}-component`)} choices={CHEMICAL_NAMES.map((value) => ({ value, label: CHEMICALS[value].name }))} onChange={(component) => onChange({ component })} />
      )}
      {written('content', hints.content)}
      {written('salinity', hints.salinity)}
      {has('figures') && (
        <SelectField id={`${ids}-figures`} label={t.figures} value={settings.figures === 'five' ? 'five' : ''} error={errors.get(`${ids}-figures`)} choices={[{ value: '', label: words.density.figures.usual }, { value: 'five', label: words.density.figures.five }]} onChange={(value) => onChange({ figures: value === 'five' ? 'five' : '' })} />
      )}
    </>
  )
}
