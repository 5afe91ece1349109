import { z } from 'zod'
import { GAUGE_STATUSES, pickedFromLogSchema, SAMPLE_PLACES, snapshotProbeSchema } from '../../core/gauge/index.ts'

const text = z.string().max(500)
const spotSchema = z.strictObject({ level: text, temperature: text })
const readingSchema = z.strictObject({ read: text, bob: text })
const DENSITY_BY = ['hydrometer', 'density-meter', 'base'] as const
const sampleSchema = z.strictObject({ from: z.enum(SAMPLE_PLACES), number: text, at: text, instrument: z.enum(DENSITY_BY), density: text, densityTemperature: text, sedimentAndWater: text })
const tapeSchema = z.strictObject({ acceptance: z.enum(['MPMS-3.1A', 'CFR43-3174.6']), bob: z.enum(['none', 'outage', 'innage']), temperature: text, standardAt: text, correction: text, certificate: text })
const hybridSchema = z.strictObject({
  bottomHeight: text, bottomPressure: text, middleHeight: text, middlePressure: text, topHeight: text, topPressure: text,
  gravity: text, vapourDensity: text, airDensity: text, limit: text,
})

const EMPTY_TAPE: z.infer<typeof tapeSchema> = { acceptance: 'MPMS-3.1A', bob: 'none', temperature: '', standardAt: '', correction: '', certificate: '' }
const EMPTY_HYBRID: z.infer<typeof hybridSchema> = { bottomHeight: '', bottomPressure: '', middleHeight: '', middlePressure: '', topHeight: '', topPressure: '', gravity: '', vapourDensity: '', airDensity: '', limit: '' }

/** A gauge sheet as it is being filled in: everything is text and may be empty. Parts that drafts of before lack stand at their beginning. */
export const gaugeFormSchema = z.strictObject({
  at: text, by: text, level: text, referenceHeight: text, waterCut: text, liquid: text, ambient: text, density: text,
  densityTemperature: text, densityPressure: text, sedimentAndWater: text, pressure: text, remarks: text,
  levelBy: z.enum(['innage', 'ullage']),
  instrument: z.enum([...DENSITY_BY, 'probe']),
  spots: z.array(spotSchema).max(40),
  /** Where the liquid temperature is from: entered, or made from the spots. */
  average: z.enum(['entered', 'by-volume', 'plain']).default('entered'),
  /** Repeated readings; as soon as there is one, the level is made from them. */
  readings: z.array(readingSchema).max(12).default([]),
  tape: tapeSchema.default(EMPTY_TAPE),
  /** Samples; as soon as there is one, density and S&W are made from them. */
  samples: z.array(sampleSchema).max(4).default([]),
  readBy: z.enum(['tape', 'automatic']).default('tape'),
  gaugeId: text.default(''),
  gaugeStatus: z.enum(GAUGE_STATUSES).default('ok'),
  hybrid: hybridSchema.default(EMPTY_HYBRID),
  /** How the free water was found: as a cut, or entered as a volume with where it is from. */
  waterBy: z.enum(['gauge', 'probe', 'entered', 'volume']).default('gauge'),
  waterVolume: text.default(''),
  waterOrigin: text.default(''),
  roofLoad: text.default(''),
  criticalZoneReason: text.default(''),
  /** A hydrostatic probe's own reading, from which the sheet was filled; with the sample that S&W is from. */
  probe: snapshotProbeSchema.extend({ sample: text.default('') }).nullable().default(null),
  /** Where in a gauge log the sheet was filled from. */
  log: pickedFromLogSchema.nullable().default(null),
})
export type GaugeForm = Readonly<z.output<typeof gaugeFormSchema>>

/** The lists that a sheet grows by. */
export type ListName = 'spots' | 'readings' | 'samples'
type InList<L extends ListName> = `${L}.${number}.${Extract<keyof GaugeForm[L][number], string>}`

/** A name of a line: `level`, `spots.2.level`, `tape.temperature`. */
export type GaugeField =
  | Exclude<keyof GaugeForm, ListName | 'tape' | 'hybrid' | 'probe' | 'log'>
  | InList<'spots'> | InList<'readings'> | InList<'samples'>
  | 'probe.sample' | `tape.${keyof GaugeForm['tape']}` | `hybrid.${keyof GaugeForm['hybrid']}`

export const EMPTY_GAUGE: GaugeForm = gaugeFormSchema.parse({
  at: '', by: '', level: '', referenceHeight: '', waterCut: '', liquid: '', ambient: '', density: '', densityTemperature: '',
  densityPressure: '', sedimentAndWater: '', pressure: '', remarks: '', levelBy: 'innage', instrument: 'hydrometer', spots: [],
})

/** What stands on a line; empty for a line that the sheet does not have. */
export function valueOf(form: GaugeForm, field: GaugeField): string {
  const value = field.split('.').reduce<unknown>((at, key) => (isRecord(at) ? at[key] : undefined), form)
  return typeof value === 'string' ? value : ''
}

/** The sheet with another text on one line. */
export function withValue(form: GaugeForm, field: GaugeField, value: string): GaugeForm {
  return gaugeFormSchema.parse(replaced(form, field.split('.'), value))
}

function replaced(at: unknown, [key = '', ...rest]: readonly string[], value: string): unknown {
  if (Array.isArray(at)) return at.map((one: unknown, i) => (String(i) === key ? replaced(one, rest, value) : one))
  if (!isRecord(at)) return at
  return { ...at, [key]: rest.length === 0 ? value : replaced(at[key], rest, value) }
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null
}

const MOST: { readonly [L in ListName]: number } = { spots: 40, readings: 12, samples: 4 }
const EMPTY_LINES: { readonly [L in ListName]: GaugeForm[L][number] } = {
  spots: { level: '', temperature: '' }, readings: { read: '', bob: '' },
  samples: { from: 'running', number: '', at: '', instrument: 'hydrometer', density: '', densityTemperature: '', sedimentAndWater: '' },
}

/** The sheet with one more empty entry in a list. A first reading takes over what stood as the level, a first spot makes nothing by itself. */
export function withLine(form: GaugeForm, list: ListName): GaugeForm {
  if (form[list].length >= MOST[list]) return form
  const begun = list === 'readings' && form.readings.length === 0 ? { ...EMPTY_LINES.readings, read: form.level } : EMPTY_LINES[list]
  return gaugeFormSchema.parse({ ...form, [list]: [...form[list], begun] })
}

export function withoutLine(form: GaugeForm, list: ListName, at: number): GaugeForm {
  return { ...form, [list]: form[list].filter((_, i) => i !== at) }
}
