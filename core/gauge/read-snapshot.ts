import { accepted, allOf, eachOnce, optional, refused, type Finding, type Outcome } from '../refusal/index.ts'
import type { Tank } from '../tank/index.ts'
import type { Decimal, Length, Percent, Pressure, Temperature } from '../units/index.ts'
import { readConditions as usualConditions } from '../volume-correction/index.ts'
import type { WorksheetLine } from '../worksheet/index.ts'
import type { AverageTemperature } from './average-temperature.ts'
import { freeWater, type FreeWater } from './free-water.ts'
import { headDensity, type HeadDensity } from './hybrid.ts'
import { checkLevel, type LevelFound, type ReadLevel } from './innage-ullage.ts'
import { parseInstant, type Instant } from './instant.ts'
import { judgeStatus } from './instrument.ts'
import { liquidTemperature } from './liquid-temperature.ts'
import { readDensity, readPressure, type ReadDensity } from './observed-density.ts'
import { ambientTemperature, sedimentAndWater, spots, type ConditionReader, type Spot } from './readings.ts'
import { enteredOrSampled, readSamples, type ReadSample, type ReadSamples } from './samples.ts'
import type { GaugeSnapshot } from './snapshot.ts'

/** A snapshot with every text read; what was allowed but must be printed stands in `exceptions`. */
export interface ParsedSnapshot {
  readonly at: Instant
  readonly reading: ReadLevel
  readonly referenceHeight: Length
  /** Innage above datum [mm], exact. */
  readonly levelMm: Decimal
  /** Free water: a cut, or a volume that was entered. */
  readonly water: FreeWater
  readonly liquid: Temperature
  /** How the spots made the liquid temperature, ending with the line `Tavg`; empty where it was entered. */
  readonly temperatureLines: readonly WorksheetLine[]
  /** Always there unless the tank is insulated. */
  readonly ambient: Temperature | undefined
  readonly spots: readonly Spot[]
  readonly pressure: Pressure | undefined
  /** As entered; undefined where it is made from samples or from head. */
  readonly density: ReadDensity | undefined
  readonly samples: readonly ReadSample[]
  readonly head: HeadDensity | null
  readonly sedimentAndWater: Percent
  /** How the samples made S&W, ending with the line `SWavg`; empty where it was entered. */
  readonly sedimentLines: readonly WorksheetLine[]
  readonly exceptions: readonly Finding[]
}

type Parts = {
  readonly at: Instant
  readonly level: LevelFound
  readonly water: FreeWater
  readonly liquid: AverageTemperature | null
  readonly ambient: Temperature | undefined
  readonly spots: readonly Spot[]
  readonly pressure: Pressure | undefined
  readonly density: ReadDensity | undefined
  readonly sedimentAndWater: Percent | undefined
  readonly samples: ReadSamples | null
  readonly head: HeadDensity | null
  readonly together: null
}

/** What a snapshot is read with: the tank that was gauged, checked; and the limits of the liquid's standard, those of API MPMS 11.1 where they are not given; and whether the product says its density itself, so that none need be measured. */
export interface ReadingContext { readonly tank: Tank; readonly readConditions?: ConditionReader; readonly densityKnown?: boolean }

/**
 * Reads a snapshot: every text, the innage (reference gauge height − ullage where the ullage was read), and whether the
 * readings can be true together. What is made from several readings is made here: the level from repeated readings, the
 * liquid temperature from spots, S&W from samples, a density from head. All findings at once.
 * Refuses `unreadable-value`, `unit-not-accepted`, `missing-value`, `value-not-used`, `out-of-range`, `malformed-input`,
 * `readings-differ`, `ullage-beyond-reference-height`, `water-above-level`, `level-outside-table`, `gauge-out-of-order`.
 * @param snapshot as the schema accepted it
 * @param context tank, and limits of temperature and pressure
 * @param path of the snapshot, for the findings: `opening`
 * @source MPMS-3.1A gauging procedures
 * @source MPMS-7 temperatures
 * @source MPMS-9 density
 */
export function readSnapshot(snapshot: GaugeSnapshot, { tank, readConditions = usualConditions, densityKnown = false }: ReadingContext, path = 'snapshot'): Outcome<ParsedSnapshot> {
  const { temperatures, samples, hybrid, instrument } = snapshot
  const level = checkLevel(snapshot, tank, path)
  const levelMm = level.ok ? level.value.levelMm : undefined
  const water = freeWater(snapshot, levelMm, tank.capacityTable, path)
  const inLiquid = spots(temperatures.spots ?? [], levelMm, `${path}.temperatures.spots`, readConditions)
  const column = levelMm === undefined || !water.ok ? undefined : { levelMm, waterMm: water.value.mm, table: tank.capacityTable }
  const status = instrument === undefined ? { refusals: [], exceptions: [] } : judgeStatus(instrument, `${path}.instrument`)
  const read = allOf<Parts>({
    at: parseInstant(snapshot.at, `${path}.at`),
    level, water,
    liquid: liquidTemperature(temperatures, inLiquid.ok ? inLiquid.value : undefined, column, readConditions, `${path}.temperatures`),
    ambient: ambientTemperature(temperatures.ambient, tank.insulated || (tank.shape ?? 'upright-cylinder') !== 'upright-cylinder', `${path}.temperatures.ambient`),
    spots: inLiquid,
    pressure: readPressure(snapshot.pressure, `${path}.pressure`, readConditions),
    density: snapshot.density === undefined ? accepted(undefined) : readDensity(snapshot.density, `${path}.density`, readConditions),
    sedimentAndWater: optional(snapshot.sedimentAndWater, (text) => sedimentAndWater(text, `${path}.sedimentAndWater`)),
    samples: samples === undefined ? accepted(null) : readSamples(samples, snapshot.at, readConditions, `${path}.samples`),
    head: hybrid === undefined ? accepted(null) : headDensity(hybrid, levelMm, `${path}.hybrid`),
    together: gathered([...misfits(snapshot, densityKnown, path), ...status.refusals]),
  })
  if (!read.ok) return refused(...eachOnce(read.findings))
  const { value: all } = read
  const share = all.samples?.sedimentAndWater ?? all.sedimentAndWater
  if (share === undefined || all.liquid === null) throw new Error('a snapshot was accepted without S&W or without a liquid temperature')
  return accepted({
    at: all.at, reading: all.level.reading, referenceHeight: all.level.referenceHeight, levelMm: all.level.levelMm,
    water: all.water, liquid: all.liquid.temperature, temperatureLines: all.liquid.lines, ambient: all.ambient, spots: all.spots,
    pressure: all.pressure, density: all.density, samples: all.samples?.samples ?? [], head: all.head, sedimentAndWater: share, sedimentLines: all.samples?.lines ?? [],
    exceptions: [...all.level.exceptions, ...status.exceptions, ...all.liquid.exceptions, ...(all.samples?.exceptions ?? [])],
  })
}

/** Parts of a snapshot that exclude each other, or that need each other. */
function misfits({ density, sedimentAndWater: share, samples, hybrid, instrument, tape }: GaugeSnapshot, densityKnown: boolean, path: string): readonly Finding[] {
  const sampled = samples !== undefined
  const fromElsewhere = density === undefined && !sampled && (hybrid !== undefined || densityKnown)
  return [
    ...(fromElsewhere ? [] : enteredOrSampled(density?.value, sampled, `${path}.density`, 'the density')),
    ...enteredOrSampled(share, sampled, `${path}.sedimentAndWater`, 'sediment and water'),
    ...(instrument === undefined || tape === undefined ? [] : [{ code: 'value-not-used', path: `${path}.tape`, value: tape.certificate ?? 'a tape', limit: 'an automatic gauge has no tape', clause: 'MPMS-3.1B level' } as const]),
  ]
}

function gathered(findings: readonly Finding[]): Outcome<null> {
  return findings.length > 0 ? refused(...findings) : accepted(null)
}
