import { z } from 'zod'
import type { Outcome } from '../../core/refusal/index.ts'
import { correctVolume, type VolumeCorrectionOutput } from '../../core/volume-correction/index.ts'
import type { Placed } from '../gauge/placed-findings.ts'
import { withUnit } from '../gauge/usual-units.ts'
import { words } from '../words/en.ts'
import { densityOf, liquidFindings, liquidPlaces, unitsOf, type LiquidForm } from './liquid-form.ts'
import { writtenSettings } from './liquid-settings.ts'
import { placeOnFields, type Places } from './place-on-fields.ts'

const text = z.string().max(100)
export const ROUNDINGS = ['standard', 'none'] as const

/** Where the factors are wanted, beside the liquid. */
export const correctionFormSchema = z.strictObject({ temperature: text, pressure: text, rounding: z.enum(ROUNDINGS) })
export type CorrectionForm = Readonly<z.infer<typeof correctionFormSchema>>
export const EMPTY_CORRECTION: CorrectionForm = { temperature: '', pressure: '', rounding: 'standard' }

/** A bench as far as it goes: the result of the core, or what is wrong or still needed. */
export interface Computed<T> extends Placed { readonly value: T | undefined; readonly places: Places }

export function computed<T>(outcome: Outcome<T>, places: Places, found = outcome.ok ? [] : outcome.findings): Computed<T> {
  const placed = placeOnFields(found, places)
  const fine = placed.findings.length === 0 && placed.missing.length === 0
  return { value: outcome.ok && fine ? outcome.value : undefined, places, ...placed }
}

/** The volume correction that the sheet asks for. */
export function computeCorrection(liquid: LiquidForm, form: CorrectionForm): Computed<VolumeCorrectionOutput> {
  const t = words.density.correction
  const units = unitsOf(liquid)
  const density = densityOf(liquid)
  const outcome = correctVolume({
    commodity: liquid.commodity, ...writtenSettings(liquid), ...(density && { density }), temperature: withUnit(form.temperature, units.temperature),
    ...(form.pressure.trim() !== '' && { pressure: withUnit(form.pressure, units.pressure) }), rounding: form.rounding,
  })
  const places = { ...liquidPlaces(liquid), temperature: { id: 'correction-temperature', label: t.temperature }, pressure: { id: 'correction-pressure', label: t.pressure } }
  return computed(outcome, places, liquidFindings(liquid, outcome))
}
