import { z } from 'zod'
import { pickedFromLogSchema, type LoggedLine, type PickedFromLog, type ProbeSetup, type WrittenProbe } from '../../core/gauge/index.ts'
import { begun, edited, redone, undone, type History } from '../gauge/history.ts'

const text = z.string().max(64)
const moduleSchema = z.strictObject({ name: text, height: text, pressure: text, temperature: text, offset: text })

/** Settings of a probe, as lines of the sheet. */
export const PROBE_SETTINGS = [
  'gravity', 'vapourDensity', 'pressureUncertainty', 'zeroLimit', 'datumOffset', 'airDensity', 'waterThreshold', 'waterDensity', 'dryDensity', 'bulgingCoefficient', 'bulgingTableDensity', 'roofMass',
] as const
export type ProbeSetting = (typeof PROBE_SETTINGS)[number]
/** Those that every probe has; the others are terms that it may have. */
export const NEEDED_SETTINGS = ['gravity', 'vapourDensity', 'pressureUncertainty', 'zeroLimit'] as const satisfies readonly ProbeSetting[]

/** A probe's reading as it is being written; everything is text and may be empty. What a draft keeps. */
export const probeFormSchema = z.strictObject({
  tank: z.string().max(40), at: text, by: z.string().max(80), modules: z.array(moduleSchema).max(12),
  settings: z.strictObject({
    gravity: text, vapourDensity: text, pressureUncertainty: text, zeroLimit: text, datumOffset: text, airDensity: text, waterThreshold: text, waterDensity: text, dryDensity: text,
    bulgingCoefficient: text, bulgingTableDensity: text, roofMass: text,
  }),
  /** Where in a gauge log its pressures stood. */
  log: pickedFromLogSchema.nullable().default(null),
})
export type ProbeForm = Readonly<z.infer<typeof probeFormSchema>>
export type ModuleField = keyof ProbeForm['modules'][number]

const EMPTY_MODULE: ProbeForm['modules'][number] = { name: '', height: '', pressure: '', temperature: '', offset: '' }

/** A new reading: six modules to fill in, nothing else. No value is ever invented. */
export function newProbe(tank: string): ProbeForm {
  const settings = { gravity: '', vapourDensity: '', pressureUncertainty: '', zeroLimit: '', datumOffset: '', airDensity: '', waterThreshold: '', waterDensity: '', dryDensity: '', bulgingCoefficient: '', bulgingTableDensity: '', roofMass: '' }
  return { tank, at: '', by: '', modules: Array.from({ length: 6 }, (_, i) => ({ ...EMPTY_MODULE, name: `M${i + 1}` })), settings, log: null }
}

/** The sheet with a probe's reading from a file; time and reader stay. Offsets that stand in the ledger take the place of empty ones. */
export function withProbe(form: ProbeForm, probe: WrittenProbe, standing: ReadonlyMap<string, string>): ProbeForm {
  const settings = {
    gravity: probe.gravity, vapourDensity: probe.vapourDensity, pressureUncertainty: probe.pressureUncertainty, zeroLimit: probe.zeroLimit,
    datumOffset: probe.datumOffset ?? '', airDensity: probe.airDensity ?? '', waterThreshold: probe.waterThreshold ?? '', waterDensity: probe.waterDensity ?? '',
    dryDensity: probe.dryDensity ?? '', bulgingCoefficient: probe.bulging?.coefficient ?? '', bulgingTableDensity: probe.bulging?.tableDensity ?? '', roofMass: probe.roofMass ?? '',
  }
  return { ...form, log: null, settings, modules: probe.modules.map((module) => ({ ...module, offset: module.offset ?? standing.get(module.name) ?? '' })) }
}

/**
 * The sheet with the pressures and temperatures of another moment, lowest module first; who read them is not known. Names,
 * heights, offsets and settings stay. A module that has a height, but was not read, waits for its pressure. Where they stood in
 * a log is kept, so that whether the tank was still goes with them.
 */
export function withPressures(form: ProbeForm, read: NonNullable<LoggedLine['modules']>, at: string, log: PickedFromLog | null): ProbeForm {
  const unread = form.modules.slice(read.length).filter(({ height, offset }) => height.trim() !== '' || offset.trim() !== '')
  const modules = [
    ...read.map(({ pressure, temperature }, i) => ({ ...(form.modules[i] ?? { ...EMPTY_MODULE, name: `M${i + 1}` }), pressure, temperature })),
    ...unread.map((module) => ({ ...module, pressure: '', temperature: '' })),
  ]
  return { ...form, at, by: '', modules, log }
}

/** The sheet with the offsets that stand in the ledger. */
export function withOffsets(form: ProbeForm, standing: ReadonlyMap<string, string>): ProbeForm {
  return { ...form, modules: form.modules.map((module) => ({ ...module, offset: standing.get(module.name) ?? module.offset })) }
}

/** The reading that the sheet says: what is empty is left out. */
export function probeOnSheet({ modules, settings }: ProbeForm): WrittenProbe {
  const given = <K extends string>(key: K, value: string): { readonly [P in K]?: string } => (value.trim() === '' ? {} : ({ [key]: value } as { readonly [P in K]: string }))
  const { bulgingCoefficient, bulgingTableDensity, gravity, vapourDensity, pressureUncertainty, zeroLimit, ...terms } = settings
  return {
    gravity, vapourDensity, pressureUncertainty, zeroLimit,
    modules: modules.map(({ offset, ...module }) => ({ ...module, ...given('offset', offset) })),
    ...Object.fromEntries(Object.entries(terms).filter(([, value]) => value.trim() !== '')),
    ...(bulgingCoefficient.trim() === '' ? {} : { bulging: { coefficient: bulgingCoefficient, ...given('tableDensity', bulgingTableDensity) } }),
  }
}

/** What the sheet says of the tank's probe apart from a reading; undefined while a height or a setting that every probe has is empty. */
export function setupOnSheet(form: ProbeForm): ProbeSetup | undefined {
  if (NEEDED_SETTINGS.some((setting) => form.settings[setting].trim() === '') || form.modules.some(({ name, height }) => name.trim() === '' || height.trim() === '')) return undefined
  const { modules, ...settings } = probeOnSheet(form)
  return { ...settings, modules: modules.map(({ pressure: _pressure, temperature: _temperature, ...module }) => module) }
}

export type ProbeAction =
  | { readonly do: 'write'; readonly field: 'at' | 'by'; readonly value: string }
  | { readonly do: 'write-setting'; readonly field: ProbeSetting; readonly value: string }
  | { readonly do: 'write-module'; readonly at: number; readonly field: ModuleField; readonly value: string }
  | { readonly do: 'add-module' }
  | { readonly do: 'drop-module'; readonly at: number }
  | { readonly do: 'put'; readonly form: ProbeForm }
  | { readonly do: 'undo' }
  | { readonly do: 'redo' }

export function openProbe(form: ProbeForm): History<ProbeForm> {
  return begun(form)
}

/** The reading after an action. */
export function probeReducer(history: History<ProbeForm>, action: ProbeAction): History<ProbeForm> {
  const form = history.present
  switch (action.do) {
    case 'undo': return undone(history)
    case 'redo': return redone(history)
    case 'put': return edited(history, action.form, null)
    case 'write': return edited(history, { ...form, [action.field]: action.value }, action.field)
    case 'write-setting': return edited(history, { ...form, settings: { ...form.settings, [action.field]: action.value } }, action.field)
    case 'write-module': return edited(history, { ...form, modules: form.modules.map((module, i) => (i === action.at ? { ...module, [action.field]: action.value } : module)) }, `${action.at}.${action.field}`)
    case 'add-module': return form.modules.length >= 12 ? history : edited(history, { ...form, modules: [...form.modules, { ...EMPTY_MODULE, name: `M${form.modules.length + 1}` }] }, null)
    case 'drop-module': return edited(history, { ...form, modules: form.modules.filter((_, i) => i !== action.at) }, null)
  }
}
