import { accepted, allOf, optional, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import { parseDensity, type Density, type Pressure, type Temperature } from '../units/index.ts'
import type { ConditionReader } from './readings.ts'
import type { WrittenDensity } from './sample-list.ts'

/** Density as it was observed, with its texts read. */
export interface ReadDensity {
  readonly value: Density
  readonly temperature: Temperature | undefined
  readonly pressure: Pressure | undefined
  readonly instrument: WrittenDensity['instrument']
}

/** A pressure within the limits of the liquid's standard; read beside a temperature that every standard accepts. */
export function readPressure(text: string | undefined, path: string, readConditions: ConditionReader): Outcome<Pressure | undefined> {
  return optional(text, (pressure) => andThen(readConditions({ temperature: '15 degC', pressure }, { temperature: path, pressure: path }), (read) =>
    read.pressure === null ? refused({ code: 'unreadable-value', path, value: pressure, limit: 'a pressure as 12.0 psi', clause: 'HOUSE units' }) : accepted(read.pressure)))
}

/**
 * A base density stands alone; a density that an instrument showed belongs to a temperature.
 * Refuses `missing-value`, `value-not-used`, and what density, temperature and pressure refuse.
 * @param density as written
 * @param path of the density, for the findings
 * @param readConditions limits of the liquid's standard
 * @source MPMS-9 density
 */
export function readDensity(density: WrittenDensity, path: string, readConditions: ConditionReader): Outcome<ReadDensity> {
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
