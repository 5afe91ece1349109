import { accepted, andThen, refused, type Finding, type Outcome } from '../refusal/index.ts'
import type { CapacityTable } from '../tank/index.ts'
import { degC, kilogramsPerCubicMetre, millimetres, parseDensity, parseLength, parseTemperature } from '../units/index.ts'
import type { Exception, WorksheetLine } from '../worksheet/index.ts'
import { probeProfile } from './hydrostatic-probe.ts'
import type { ProbeProfile } from './probe.ts'
import type { GaugeSnapshot } from './snapshot.ts'

/** What of a snapshot a probe gives, as text with units. The water cut is there only where the probe saw water. */
export interface FieldsOfProbe {
  readonly level: string
  readonly liquid: string
  readonly density: string
  readonly densityTemperature: string
  readonly waterCut: string | undefined
  readonly spots: readonly { readonly level: string; readonly temperature: string }[]
}

/** Lines and exceptions that stand on a worksheet besides those of the gauge. */
export interface Evidence { readonly lines: readonly WorksheetLine[]; readonly exceptions: readonly Exception[] }

export const NO_EVIDENCE: Evidence = { lines: [], exceptions: [] }

const CLAUSE = 'MPMS-16.2 custody snapshot'

/**
 * Level, average temperature and density of the product, water cut and spots as a snapshot takes them from a probe.
 * Refuses `out-of-range` where all that the probe sees is water.
 * @param profile of the probe
 * @param path of the probe
 * @source MPMS-16.2 custody snapshot
 */
export function fieldsOfProbe(profile: ProbeProfile, path: string): Outcome<FieldsOfProbe> {
  const { level, waterLevel, productDensity: density, productTemperature: temperature, modules } = profile
  if (density === null || temperature === null) return refused({ code: 'out-of-range', path, value: 'water up to the surface', limit: 'a stratum of product', clause: CLAUSE })
  const top = Number(waterLevel?.value ?? '-1')
  return accepted({
    level: `${level.value} ${level.unit}`, liquid: `${temperature.value} ${temperature.unit}`, density: `${density.value} ${density.unit}`, densityTemperature: `${temperature.value} ${temperature.unit}`,
    waterCut: waterLevel === null ? undefined : `${waterLevel.value} ${waterLevel.unit}`,
    spots: modules.filter((module) => module.covered && Number(module.height.value) > top).toReversed()
      .map((module) => ({ level: `${module.height.value} ${module.height.unit}`, temperature: `${module.temperature.value} ${module.temperature.unit}` })),
  })
}

/**
 * A snapshot from a probe's reading and what the probe cannot know. The water cut is the probe's where it saw water; where it
 * saw none it must be given, as a cut or a volume, since what stands below the lowest module is not seen.
 * Refuses what {@link probeProfile} refuses, `missing-value` for the water cut, `value-not-used` where both are there.
 * @param parts everything of the snapshot that is not the probe's
 * @param probe as read
 * @param capacityTable of the tank
 * @param path of the snapshot
 * @source MPMS-16.2 custody snapshot
 */
export function snapshotOfProbe(
  parts: Omit<GaugeSnapshot, 'level' | 'waterCut' | 'temperatures' | 'density' | 'probe'> & { readonly ambient?: string | undefined; readonly waterCut?: string | undefined },
  probe: NonNullable<GaugeSnapshot['probe']>, capacityTable: CapacityTable, path = 'snapshot',
): Outcome<GaugeSnapshot> {
  const { ambient, waterCut, ...rest } = parts
  const { sample: _, ...reading } = probe
  return andThen(probeProfile({ ...reading, capacityTable }, `${path}.probe`), (profile) => andThen(fieldsOfProbe(profile, `${path}.probe`), (fields) => {
    const cut = fields.waterCut ?? waterCut
    if (cut === undefined && rest.waterVolume === undefined) return refused({ code: 'missing-value', path: `${path}.waterCut`, value: '', limit: `the probe saw no water above ${reading.modules[0]?.name ?? 'its lowest module'}; what stands below it must be gauged, entered as 0 mm, or entered as a volume`, clause: CLAUSE })
    const twice = waterCut === undefined ? { field: 'waterVolume', value: rest.waterVolume?.volume } : { field: 'waterCut', value: waterCut }
    if (fields.waterCut !== undefined && twice.value !== undefined) return refused({ code: 'value-not-used', path: `${path}.${twice.field}`, value: twice.value, limit: `the probe saw water up to ${fields.waterCut}`, clause: CLAUSE })
    return accepted({
      ...rest, level: { innage: fields.level }, ...(cut === undefined ? {} : { waterCut: cut }), ...(fields.waterCut === undefined ? {} : { waterBy: 'probe' as const }),
      temperatures: { liquid: fields.liquid, ...(ambient === undefined ? {} : { ambient }), spots: [...fields.spots] },
      density: { value: fields.density, temperature: fields.densityTemperature, instrument: 'probe' as const }, probe,
    })
  }))
}

/**
 * Whether level, temperature and density of a snapshot are those that its probe's raw readings give, and the probe's lines
 * and exceptions for its worksheet. Figures that a person put in their place are refused, `probe-figures-differ`; so is a
 * density said to be the probe's without a probe, `missing-value`.
 * @param snapshot with or without a probe
 * @param table of its tank
 * @param path of the snapshot
 * @source MPMS-16.2 custody snapshot
 */
export function probeEvidence(snapshot: GaugeSnapshot, table: CapacityTable, path: string): Outcome<Evidence> {
  const { probe } = snapshot
  if (probe === undefined) {
    if (snapshot.density?.instrument !== 'probe') return accepted(NO_EVIDENCE)
    return refused({ code: 'missing-value', path: `${path}.probe`, value: '', limit: 'a density by the probe counts only with the probe\'s own readings', clause: CLAUSE })
  }
  const { sample: _, ...reading } = probe
  return andThen(probeProfile({ ...reading, capacityTable: table }, `${path}.probe`), (profile) => andThen(fieldsOfProbe(profile, `${path}.probe`), (fields) => {
    const findings = differences(snapshot, fields, path)
    return findings.length > 0 ? refused(...findings) : accepted({ lines: profile.worksheet, exceptions: profile.exceptions })
  }))
}

type Reader = (text: string) => number | undefined

const LEVEL: Reader = (text) => { const read = parseLength(text, ''); return read.ok ? millimetres(read.value).toNumber() : undefined }
const TEMPERATURE: Reader = (text) => { const read = parseTemperature(text, ''); return read.ok ? degC(read.value) : undefined }
const DENSITY: Reader = (text) => { const read = parseDensity(text, ''); return read.ok ? kilogramsPerCubicMetre(read.value) : undefined }

function differences({ level, waterCut, waterVolume, temperatures, density }: GaugeSnapshot, fields: FieldsOfProbe, path: string): readonly Finding[] {
  const differs = (field: string, stands: string, expected: string, read: Reader): readonly Finding[] => {
    const [here, there] = [read(stands), read(expected)]
    // a text that cannot be read is refused with the snapshot
    if (here === undefined || here === there) return []
    return [{ code: 'probe-figures-differ', path: `${path}.${field}`, value: stands, limit: expected, clause: CLAUSE }]
  }
  return [
    ...('innage' in level ? differs('level.innage', level.innage, fields.level, LEVEL) : [{ code: 'probe-figures-differ', path: `${path}.level`, value: 'a level that was not the probe\'s', limit: fields.level, clause: CLAUSE } as const]),
    ...(temperatures.liquid === undefined ? [] : differs('temperatures.liquid', temperatures.liquid, fields.liquid, TEMPERATURE)),
    ...(fields.waterCut === undefined || waterCut === undefined ? [] : differs('waterCut', waterCut, fields.waterCut, LEVEL)),
    ...(fields.waterCut === undefined || waterVolume === undefined ? [] : [{ code: 'probe-figures-differ', path: `${path}.waterVolume`, value: waterVolume.volume, limit: fields.waterCut, clause: CLAUSE } as const]),
    ...(density === undefined || density.instrument !== 'probe' ? [] : [
      ...differs('density.value', density.value, fields.density, DENSITY),
      ...(density.temperature === undefined ? [] : differs('density.temperature', density.temperature, fields.densityTemperature, TEMPERATURE)),
    ]),
  ]
}

/**
 * For a ticket, sediment and water beside a probe comes from a sample: what the probe makes out as entrained water is a hint
 * and never booked. Refuses `sample-missing` where neither samples nor the number of one stand on the snapshot.
 * @param snapshot with or without a probe
 * @param path of the snapshot
 * @source MPMS-16.2 entrained water
 */
export function refuseUnsampled({ probe, samples, sedimentAndWater }: GaugeSnapshot, path: string): Outcome<null> {
  if (probe === undefined || samples !== undefined || (probe.sample ?? '').trim() !== '') return accepted(null)
  return refused({ code: 'sample-missing', path: `${path}.probe.sample`, value: sedimentAndWater ?? 'a probe gauge', limit: 'name the sample that it was found in: a probe\'s own estimate of entrained water is never booked', clause: 'MPMS-16.2 entrained water' })
}
