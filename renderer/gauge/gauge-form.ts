import { z } from 'zod'
import type { GaugeSnapshot } from '../../core/gauge/index.ts'
import { readLocalTime, type ReadTime } from '../parts/local-time.ts'

/** The lines of a gauge sheet that hold what a person types. */
export const TEXT_FIELDS = [
  'at', 'by', 'level', 'referenceHeight', 'waterCut', 'liquid', 'ambient', 'density', 'densityTemperature', 'densityPressure',
  'sedimentAndWater', 'pressure', 'remarks',
] as const
export type TextFieldName = (typeof TEXT_FIELDS)[number]

const text = z.string().max(500)
const spotSchema = z.strictObject({ level: text, temperature: text })

/** A gauge sheet as it is being filled in: everything is text and may be empty. */
export const gaugeFormSchema = z.strictObject({
  at: text, by: text, level: text, referenceHeight: text, waterCut: text, liquid: text, ambient: text, density: text,
  densityTemperature: text, densityPressure: text, sedimentAndWater: text, pressure: text, remarks: text,
  levelBy: z.enum(['innage', 'ullage']),
  instrument: z.enum(['hydrometer', 'density-meter', 'base']),
  spots: z.array(spotSchema).max(40),
})
export type GaugeForm = Readonly<z.infer<typeof gaugeFormSchema>>

/** A name of a line: also `spots.2.level`. */
export type GaugeField = TextFieldName | 'levelBy' | 'instrument' | `spots.${number}.${'level' | 'temperature'}`

export const EMPTY_GAUGE: GaugeForm = {
  at: '', by: '', level: '', referenceHeight: '', waterCut: '', liquid: '', ambient: '', density: '', densityTemperature: '',
  densityPressure: '', sedimentAndWater: '', pressure: '', remarks: '', levelBy: 'innage', instrument: 'hydrometer', spots: [],
}

/** What stands on a line. */
export function valueOf(form: GaugeForm, field: GaugeField): string {
  const spot = /^spots\.(\d+)\.(level|temperature)$/.exec(field)
  if (spot) return form.spots[Number(spot[1])]?.[spot[2] === 'level' ? 'level' : 'temperature'] ?? ''
  return TEXT_FIELDS.some((name) => name === field) || field === 'levelBy' || field === 'instrument' ? form[field as TextFieldName] : ''
}

/** The sheet with another text on one line. */
export function withValue(form: GaugeForm, field: GaugeField, value: string): GaugeForm {
  const spot = /^spots\.(\d+)\.(level|temperature)$/.exec(field)
  if (!spot) return gaugeFormSchema.parse({ ...form, [field]: value })
  const at = Number(spot[1])
  const part = spot[2] === 'level' ? 'level' : 'temperature'
  return { ...form, spots: form.spots.map((line, i) => (i === at ? { ...line, [part]: value } : line)) }
}

export function withSpot(form: GaugeForm): GaugeForm {
  return form.spots.length >= 40 ? form : { ...form, spots: [...form.spots, { level: '', temperature: '' }] }
}

export function withoutSpot(form: GaugeForm, at: number): GaugeForm {
  return { ...form, spots: form.spots.filter((_, i) => i !== at) }
}

/** Which lines this sheet has, given what was chosen on it. */
export function linesOf(form: GaugeForm): readonly GaugeField[] {
  return [
    'at', 'by', 'levelBy', 'level', ...(form.levelBy === 'ullage' ? ['referenceHeight' as const] : []), 'waterCut', 'liquid', 'ambient',
    'instrument', 'density', ...(form.instrument === 'base' ? [] : ['densityTemperature' as const]),
    ...(form.instrument === 'density-meter' ? ['densityPressure' as const] : []), 'sedimentAndWater', 'pressure',
    ...form.spots.flatMap((_, i): GaugeField[] => [`spots.${i}.level`, `spots.${i}.temperature`]), 'remarks',
  ]
}

/**
 * The snapshot on the sheet: texts as they were typed, the time as an instant. A time that cannot be read is handed on
 * as it stands, beside the reason.
 */
export function snapshotFrom(form: GaugeForm, tank: string, product: string, zone: string): { readonly snapshot: GaugeSnapshot; readonly time: ReadTime } {
  const time = readLocalTime(form.at, zone)
  const spots = form.spots.filter((spot) => spot.level !== '' || spot.temperature !== '')
  const observed = form.instrument !== 'base'
  return {
    time,
    snapshot: {
      tank, product, at: time.ok ? time.instant : form.at, by: form.by,
      level: form.levelBy === 'innage' ? { innage: form.level } : { ullage: form.level, ...given('observedReferenceHeight', form.referenceHeight) },
      waterCut: form.waterCut,
      temperatures: { liquid: form.liquid, ...given('ambient', form.ambient), ...(spots.length > 0 && { spots }) },
      ...given('pressure', form.pressure),
      density: {
        value: form.density, instrument: form.instrument,
        ...(observed && given('temperature', form.densityTemperature)),
        ...(form.instrument === 'density-meter' && given('pressure', form.densityPressure)),
      },
      sedimentAndWater: form.sedimentAndWater,
      ...given('remarks', form.remarks),
    },
  }
}

function given<K extends string>(key: K, value: string): { readonly [P in K]?: string } {
  return value.trim() === '' ? {} : ({ [key]: value } as { readonly [P in K]: string })
}
