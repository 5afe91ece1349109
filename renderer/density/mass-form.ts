import { z } from 'zod'
import { AIR_CONVENTION_NAMES, massAndWeight, type MassAndWeightOutput } from '../../core/quantity/index.ts'
import { BASE_TEMPERATURES } from '../../core/volume-correction/index.ts'
import { withUnit } from '../gauge/usual-units.ts'
import { words } from '../words/en.ts'
import { computed, type Computed } from './correction-form.ts'

const text = z.string().max(100)
export const AMOUNTS = ['volume', 'mass', 'weight'] as const

/** An amount of a liquid as it is typed: of what, and how weight in air is made. */
export const massFormSchema = z.strictObject({ baseTemperature: z.enum(BASE_TEMPERATURES), density: text, of: z.enum(AMOUNTS), amount: text, convention: z.enum(AIR_CONVENTION_NAMES) })
export type MassForm = Readonly<z.infer<typeof massFormSchema>>
export const EMPTY_MASS: MassForm = { baseTemperature: '15 degC', density: '', of: 'volume', amount: '', convention: 'MPMS-11.5' }

export function massUnits({ baseTemperature, of }: MassForm): { readonly density: string; readonly amount: string } {
  const imperial = baseTemperature === '60 degF'
  return { density: imperial ? 'degAPI' : 'kg/m3', amount: of === 'volume' ? (imperial ? 'bbl' : 'm3') : 't' }
}

/** Volume, mass and weight of the sheet, each in every unit. */
export function computeMass(form: MassForm): Computed<MassAndWeightOutput> {
  const t = words.density.mass
  const units = massUnits(form)
  const amount = { id: 'mass-amount', label: t.amount }
  const outcome = massAndWeight({ baseTemperature: form.baseTemperature, density: withUnit(form.density, units.density), [form.of]: withUnit(form.amount, units.amount), convention: form.convention })
  return computed(outcome, { density: { id: 'mass-density', label: t.density }, volume: amount, mass: amount, weight: amount })
}
