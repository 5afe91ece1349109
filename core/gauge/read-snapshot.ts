import { accepted, allOf, optional, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import type { Tank } from '../tank/index.ts'
import {
  parseDensity, type Decimal, type Density, type Length, type Percent, type Pressure, type Temperature,
} from '../units/index.ts'
import { readConditions as usualConditions } from '../volume-correction/index.ts'
import { checkLevel, type LevelFound, type ReadLevel } from './innage-ullage.ts'
import { parseInstant, type Instant } from './instant.ts'
import { ambientTemperature, sedimentAndWater, spots, waterCut, type ConditionReader, type Spot } from './readings.ts'
import type { GaugeSnapshot } from './snapshot.ts'

/** Density as it was observed, with its texts read. */
export interface ReadDensity {
  readonly value: Density
  readonly temperature: Temperature | undefined
  readonly pressure: Pressure | undefined
  readonly instrument: GaugeSnapshot['density']['instrument']
}

/** A snapshot with every text read; what was allowed but must be printed stands in `exceptions`. */
export interface ParsedSnapshot {
  readonly at: Instant
  readonly reading: ReadLevel
  readonly referenceHeight: Length
  /** Innage above datum [mm], exact. */
  readonly levelMm: Decimal
  readonly waterCut: Length
  readonly waterCutMm: Decimal
  readonly liquid: Temperature
  /** Always there unless the tank is insulated. */
  readonly ambient: Temperature | undefined
  readonly spots: readonly Spot[]
  readonly pressure: Pressure | undefined
  readonly density: ReadDensity
  readonly sedimentAndWater: Percent
  readonly exceptions: readonly Finding[]
}

/**
 * Reads a snapshot: every text, the innage (reference gauge height − ullage where the ullage was read), and whether the
 * readings can be true together. All findings at once.
 * Refuses `unreadable-value`, `unit-not-accepted`, `missing-value`, `out-of-range`, `malformed-input`,
 * `ullage-beyond-reference-height`, `water-above-level`; `reference-height-differs` is an exception, not a refusal.
 * @param snapshot as the schema accepted it
 * @param context the tank that was gauged, checked; and what reads temperatures and pressures of its liquid within the limits
 *   of the standard, that of API MPMS 11.1 where it is not given
 * @param path of the snapshot, for the findings: `opening`
 * @source MPMS-3.1A gauging procedures
 * @source MPMS-7 temperatures
 * @source MPMS-9 density
 */
export function readSnapshot(snapshot: GaugeSnapshot, { tank, readConditions = usualConditions }: { readonly tank: Tank; readonly readConditions?: ConditionReader }, path = 'snapshot'): Outcome<ParsedSnapshot> {
  const level = checkLevel(snapshot.level, tank, `${path}.level`)
  const levelMm = level.ok ? level.value.levelMm : undefined
  const read = allOf<{
    at: Instant; level: LevelFound; waterCut: { length: Length; mm: Decimal }; liquid: Temperature; ambient: Temperature | undefined
    spots: readonly Spot[]; pressure: Pressure | undefined; density: ReadDensity; sedimentAndWater: Percent
  }>({
    at: parseInstant(snapshot.at, `${path}.at`),
    level,
    waterCut: waterCut(snapshot.waterCut, levelMm, `${path}.waterCut`),
    liquid: andThen(readConditions({ temperature: snapshot.temperatures.liquid }, { temperature: `${path}.temperatures.liquid`, pressure: '' }), (read) => accepted(read.temperature)),
    ambient: ambientTemperature(snapshot.temperatures.ambient, tank.insulated, `${path}.temperatures.ambient`),
    spots: spots(snapshot.temperatures.spots ?? [], levelMm, `${path}.temperatures.spots`, readConditions),
    pressure: readPressure(snapshot.pressure, `${path}.pressure`, readConditions),
    density: readDensity(snapshot.density, `${path}.density`, readConditions),
    sedimentAndWater: sedimentAndWater(snapshot.sedimentAndWater, `${path}.sedimentAndWater`),
  })
  return andThen(read, (all) => accepted({
    at: all.at, reading: all.level.reading, referenceHeight: all.level.referenceHeight, levelMm: all.level.levelMm,
    waterCut: all.waterCut.length, waterCutMm: all.waterCut.mm, liquid: all.liquid, ambient: all.ambient, spots: all.spots,
    pressure: all.pressure, density: all.density, sedimentAndWater: all.sedimentAndWater, exceptions: all.level.exceptions,
  }))
}

/** A pressure within the limits of the liquid's standard; read beside a temperature that every standard accepts. */
function readPressure(text: string | undefined, path: string, readConditions: ConditionReader): Outcome<Pressure | undefined> {
  return optional(text, (pressure) => andThen(readConditions({ temperature: '15 degC', pressure }, { temperature: path, pressure: path }), (read) =>
    read.pressure === null ? refused({ code: 'unreadable-value', path, value: pressure, limit: 'a pressure as 12.0 psi', clause: 'HOUSE units' }) : accepted(read.pressure)))
}

/** A base density stands alone; a density that an instrument showed belongs to a temperature. */
function readDensity(density: GaugeSnapshot['density'], path: string, readConditions: ConditionReader): Outcome<ReadDensity> {
  const parts = allOf<{ value: Density; temperature: Temperature | undefined; pressure: Pressure | undefined }>({
    value: parseDensity(density.value, `${path}.value`),
    temperature: optional(density.temperature, (temperature) => andThen(readConditions({ temperature }, { temperature: `${path}.temperature`, pressure: '' }), (read) => accepted(read.temperature))),
    pressure: readPressure(density.pressure, `${path}.pressure`, readConditions),
  })
  const findings: Finding[] = parts.ok ? [] : [...parts.findings]
  if (density.instrument === 'base') {
    for (const part of (['temperature', 'pressure'] as const).filter((name) => density[name] !== undefined)) {
      findings.push({ code: 'value-not-used', path: `${path}.${part}`, value: density[part] ?? '', limit: 'a base density is at base conditions; leave it out, or name the instrument that showed the density', clause: 'HOUSE gauge snapshot' })
    }
  } else if (density.temperature === undefined) {
    findings.push({ code: 'missing-value', path: `${path}.temperature`, value: '', limit: 'an observed density counts only with the temperature of the sample', clause: 'MPMS-9 hydrometer reading' })
  }
  if (findings.length > 0 || !parts.ok) return refused(...findings)
  return accepted({ ...parts.value, instrument: density.instrument })
}
