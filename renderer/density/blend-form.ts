import { z } from 'zod'
import { parseMass, VOLUME_UNITS } from '../../core/units/index.ts'
import { BASE_TEMPERATURES, blendDensity, type BlendDensityInput, type BlendDensityOutput } from '../../core/volume-correction/index.ts'
import { withUnit } from '../gauge/usual-units.ts'
import { words } from '../words/en.ts'
import { computed, type Computed } from './correction-form.ts'
import type { Places } from './place-on-fields.ts'

const text = z.string().max(100)
export const MOST_BATCHES = 50

/** A batch as it is typed; its amount is a volume or a mass by the unit behind it. */
const batchSchema = z.strictObject({ name: text, density: text, amount: text })
export const blendFormSchema = z.strictObject({ baseTemperature: z.enum(BASE_TEMPERATURES), volumeUnit: z.enum(VOLUME_UNITS), batches: z.array(batchSchema).max(MOST_BATCHES) })
export type BlendForm = Readonly<z.infer<typeof blendFormSchema>>
export type BatchForm = BlendForm['batches'][number]
export type BatchField = keyof BatchForm

export const EMPTY_BATCH: BatchForm = { name: '', density: '', amount: '' }
export const EMPTY_BLEND: BlendForm = { baseTemperature: '15 degC', volumeUnit: 'm3', batches: [EMPTY_BATCH, EMPTY_BATCH] }

export function blendUnits({ baseTemperature, volumeUnit }: BlendForm): { readonly density: string; readonly amount: string } {
  return { density: baseTemperature === '60 degF' ? 'degAPI' : 'kg/m3', amount: volumeUnit }
}

export function withBatch(form: BlendForm, at: number, change: Partial<BatchForm>): BlendForm {
  return { ...form, batches: form.batches.map((batch, i) => (i === at ? { ...batch, ...change } : batch)) }
}

/** The blend of the batches that were begun; two at least are asked for. */
export function computeBlend(form: BlendForm): Computed<BlendDensityOutput> {
  const units = blendUnits(form)
  const begun = form.batches.flatMap((batch, at) => (Object.values(batch).some((typed) => typed.trim() !== '') ? [{ batch, at }] : []))
  const lines = begun.length >= 2 ? begun : form.batches.map((batch, at) => ({ batch, at }))
  const outcome = blendDensity({ baseTemperature: form.baseTemperature, volumeUnit: form.volumeUnit, batches: lines.map(({ batch, at }) => batchOf(batch, at, units)) })
  return computed(outcome, blendPlaces(lines.map(({ at }) => at)))
}

/** A batch is named by its line on the sheet, whichever lines before it are empty. */
function batchOf({ name, density, amount }: BatchForm, at: number, units: ReturnType<typeof blendUnits>): BlendDensityInput['batches'][number] {
  const full = withUnit(amount, units.amount)
  const named = { name: name.trim() === '' ? words.density.blend.nameHint(at + 1) : name.trim(), density: withUnit(density, units.density) }
  if (full.trim() === '') return named
  return parseMass(full, 'amount').ok ? { ...named, mass: full } : { ...named, volume: full }
}

export function batchId(line: number, field: BatchField): string {
  return `blend-${line}-${field}`
}

function blendPlaces(lines: readonly number[]): Places {
  const t = words.density.blend
  return Object.fromEntries(lines.flatMap((line, at) => {
    const amount = { id: batchId(line, 'amount'), label: t.lineAmount(line + 1) }
    return [[`batches.${at}.density`, { id: batchId(line, 'density'), label: t.lineDensity(line + 1) }], [`batches.${at}.volume`, amount], [`batches.${at}.mass`, amount]] as const
  }))
}
