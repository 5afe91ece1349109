import { z } from 'zod'
import type { Product } from '../../core/quantity/index.ts'
import type { Finding, Outcome } from '../../core/refusal/index.ts'
import { GROUPS, type DensityInput } from '../../core/volume-correction/index.ts'
import { withUnit } from '../gauge/usual-units.ts'
import { words } from '../words/en.ts'
import { withCurveFindings } from './curve-form.ts'
import { EMPTY_SETTINGS, liquidSettingsSchema, settingsFrom, settingsThatApply, type LiquidKind } from './liquid-settings.ts'
import { settingPlaces, type Places } from './place-on-fields.ts'

const text = z.string().max(100)
export const INSTRUMENTS = ['base', 'hydrometer', 'meter'] as const

/** A liquid on the bench: what corrects it, and its density as it was read. Two benches share it. */
export const liquidFormSchema = liquidSettingsSchema.extend({ density: text, instrument: z.enum(INSTRUMENTS), densityTemperature: text, densityPressure: text })
export type LiquidForm = Readonly<z.infer<typeof liquidFormSchema>>
export const EMPTY_LIQUID: LiquidForm = { ...EMPTY_SETTINGS, density: '', instrument: 'base', densityTemperature: '', densityPressure: '' }

/** Start of the ids of the liquid's fields. */
export const LIQUID = 'liquid'

/** The units of bare numbers, by the base temperature; densities as the trade writes those of the commodity. */
export function unitsOf({ commodity, baseTemperature }: LiquidKind): { readonly temperature: string; readonly pressure: string; readonly density: string } {
  if (baseTemperature !== '60 degF') return { temperature: 'degC', pressure: 'kPa', density: 'kg/m3' }
  return { temperature: 'degF', pressure: 'psi', density: GROUPS.some((group) => group === commodity) ? 'degAPI' : commodity === 'lpg' ? 'RD' : 'kg/m3' }
}

/** The density on the sheet, bare numbers with their units; absent where nothing was written. */
export function densityOf(form: LiquidForm): DensityInput | undefined {
  const units = unitsOf(form)
  const value = withUnit(form.density, units.density)
  const temperature = withUnit(form.densityTemperature, units.temperature)
  if (form.instrument === 'base') return value.trim() === '' ? undefined : { value }
  if (value.trim() === '' && temperature.trim() === '') return undefined
  return { value, temperature, ...(form.densityPressure.trim() !== '' && { pressure: withUnit(form.densityPressure, units.pressure) }), ...(form.instrument === 'hydrometer' && { hydrometer: true }) }
}

/** The liquid with commodity, edition, base and settings of a product on record. */
export function likeProduct(form: LiquidForm, product: Product): LiquidForm {
  return { ...form, ...settingsFrom(product) }
}

/** What the core said, and what it leaves to whoever writes a curve. */
export function liquidFindings(form: LiquidForm, outcome: Outcome<unknown>): readonly Finding[] {
  const found = outcome.ok ? [] : outcome.findings
  return settingsThatApply(form).has('curve') ? withCurveFindings(found, form.curve, 'curve') : found
}

/** Where the findings of a liquid belong. */
export function liquidPlaces(form: LiquidForm): Places {
  const t = words.density.liquid
  return {
    ...settingPlaces(LIQUID, '', form.curve),
    density: { id: `${LIQUID}-density`, label: t.density }, 'density.temperature': { id: `${LIQUID}-densityTemperature`, label: t.densityTemperature },
    'density.pressure': { id: `${LIQUID}-densityPressure`, label: t.densityPressure }, 'density.hydrometer': { id: `${LIQUID}-instrument`, label: t.instrument },
  }
}
