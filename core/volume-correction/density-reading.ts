import { accepted, allOf, andThen, refused, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import type { Citation } from '../sources.ts'
import { degF, kilogramsPerCubicMetre, parseDensity, WATER_AT_60F, writtenDigits, type Density, type DensityUnit } from '../units/index.ts'
import { exactLine, inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import type { BaseTemperature, DensityInput } from './commodity.ts'
import { CARRIED_ON, pressureLine } from './condition-lines.ts'
import type { ConditionPaths, Conditions, WrittenConditions } from './family.ts'
import { hydrometerCorrection } from './hydrometer.ts'

/** How a density was stated: at base conditions, or as observed at a temperature and pressure. */
export interface DensityReading {
  readonly density: Density
  /** Temperature, pressure and hydrometer correction of an observed density; null for a density at base conditions. */
  readonly observed: (Conditions & { readonly hydrometer: { readonly factor: number; readonly graduatedAt: BaseTemperature } | null }) | null
  /** Density as used: as written, times the hydrometer correction [kg/m³]. */
  readonly used: number
}

/** What a family decides of the reading of a density. */
export interface ReadingRules {
  readonly baseTemperature: BaseTemperature
  /** Reads the conditions of the observation within the limits of the family. */
  readonly readConditions: (written: WrittenConditions, paths: ConditionPaths) => Outcome<Conditions>
  /** Where the standard says that an observed density belongs to a temperature. */
  readonly clause: Citation
  /** Density of water at 60 °F for °API and relative density [kg/m³]; 999.016 where it is not given. */
  readonly water60?: number
}

/** °API gravity and relative density 60/60 are defined at 60 °F, whatever the base temperature. @source MPMS-11.1-2004 11.1.5.1 */
export function definedAt60(unit: DensityUnit): unit is 'degAPI' | 'RD' {
  return unit === 'degAPI' || unit === 'RD'
}

/**
 * A density as it was written, with the conditions and the hydrometer correction of an observed one:
 *   used = ρ × HYC
 * A hydrometer in °API or relative density is graduated at 60 °F, one in kg/m³ or g/cm³ at the product's base temperature.
 * Refuses all at once what value, temperature and pressure refuse, and `missing-value` for a pressure or a hydrometer
 * without temperature.
 * @param written the density and, where it was observed, its conditions
 * @param path where it stood
 * @param rules base temperature, limits and water of the family
 * @source MPMS-9 hydrometer reading
 */
export function readDensity(written: DensityInput, path: string, rules: ReadingRules): Outcome<DensityReading> {
  const { value, temperature, pressure, hydrometer } = written
  const density = parseDensity(value, `${path}.value`)
  const paths = { temperature: `${path}.temperature`, pressure: `${path}.pressure` }
  const kgPerM3 = (read: Density): number => kilogramsPerCubicMetre(read, rules.water60 ?? WATER_AT_60F)
  if (temperature === undefined) {
    // a pressure that cannot be read is said as well
    const pressed: Outcome<Conditions | null> = pressure === undefined ? accepted(null) : rules.readConditions({ temperature: '15 degC', pressure }, paths)
    return andThen(allOf({ density, pressed, atBase: onlyAtBase(written, path, rules.clause) }), (read) => accepted({ density: read.density, observed: null, used: kgPerM3(read.density) }))
  }
  return andThen(allOf({ density, conditions: rules.readConditions({ temperature, pressure }, paths) }), (read) => {
    const graduatedAt = definedAt60(read.density.unit) ? '60 degF' : rules.baseTemperature
    const correction = hydrometer === true ? { factor: hydrometerCorrection(graduatedAt, degF(read.conditions.temperature)), graduatedAt } : null
    return accepted({ density: read.density, observed: { ...read.conditions, hydrometer: correction }, used: kgPerM3(read.density) * (correction?.factor ?? 1) })
  })
}

/** A density without temperature is at base conditions, where there is no pressure and no hydrometer. */
function onlyAtBase({ pressure, hydrometer }: DensityInput, path: string, clause: Citation): Outcome<null> {
  if (hydrometer !== true && pressure === undefined) return accepted(null)
  return refused({
    code: 'missing-value', path: `${path}.temperature`, value: '', clause,
    limit: 'an observed density needs the temperature at which it was observed; leave out pressure and hydrometer where the density is at base conditions',
  })
}

/**
 * Worksheet lines of a density as it was written: ρstated; or ρobs, tobs, Pobs and, with a hydrometer, HYC and ρhyc.
 * @param reading as {@link readDensity} gives it
 * @param baseTemperature of the product
 * @param clause of a density that was stated at base conditions
 * @param pressureClause where the standard limits the pressure
 * @source MPMS-9 glass hydrometer correction
 */
export function readingLines(reading: DensityReading, baseTemperature: BaseTemperature, clause: Citation, pressureClause?: Citation): readonly WorksheetLine[] {
  const { density, observed } = reading
  const digits = writtenDigits(density)
  if (observed === null) {
    const at = definedAt60(density.unit) ? '60 degF' : baseTemperature
    return [inputLine({ symbol: 'ρstated', name: `Density as stated, at ${at}`, value: digits, unit: density.unit, clause })]
  }
  const lines = [
    inputLine({ symbol: 'ρobs', name: 'Observed density', value: digits, unit: density.unit, clause: 'MPMS-9' }),
    inputLine({ symbol: 'tobs', name: 'Temperature of the observed density', value: writtenDigits(observed.temperature), unit: observed.temperature.unit, clause: 'MPMS-7' }),
    pressureLine('Pobs', 'Pressure of the observed density', observed.pressure, observed.temperature.unit === 'degC' ? 'kPa' : 'psi', pressureClause),
  ]
  return observed.hydrometer === null ? lines : [...lines, ...hydrometerLines(reading.used, observed.hydrometer)]
}

function hydrometerLines(used: number, { factor, graduatedAt }: { readonly factor: number; readonly graduatedAt: BaseTemperature }): readonly WorksheetLine[] {
  const base = graduatedAt === '15 degC' ? 15 : 20
  const formula = graduatedAt === '60 degF' ? '1 − 0.00001278 (t − 60) − 0.0000000062 (t − 60)²' : `1 − 0.000023 (t − ${base}) − 0.00000002 (t − ${base})²`
  const clause = 'MPMS-9 glass hydrometer correction'
  return [
    exactLine({ symbol: 'HYC', name: `Glass correction of a hydrometer graduated at ${graduatedAt}`, unit: '', formula, clause, from: ['tobs'], value: factor }),
    roundedLine({ symbol: 'ρhyc', name: 'Observed density, corrected for the hydrometer', unit: 'kg/m3', formula: 'ρobs × HYC', clause, from: ['ρobs', 'HYC'], rounded: discriminate('density kg/m3', used), notes: [CARRIED_ON] }),
  ]
}
