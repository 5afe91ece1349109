import { accepted, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import type { Temperature } from '../units/index.ts'
import { averageTemperature, type AverageTemperature, type Column } from './average-temperature.ts'
import type { ConditionReader, Spot } from './readings.ts'
import type { GaugeSnapshot } from './snapshot.ts'

/**
 * Temperature of the liquid: as entered, or from the spots where it is left out.
 * Refuses `missing-value` where neither is there, `value-not-used` where both say how, and what {@link averageTemperature} refuses.
 * @param written as the snapshot has it
 * @param spots read; undefined where they were refused
 * @param column undefined where level or water cut was refused
 * @param readConditions limits of the liquid's standard
 * @param path of the temperatures, for the findings
 * @source MPMS-7 average temperature
 */
export function liquidTemperature(
  written: GaugeSnapshot['temperatures'], spots: readonly Spot[] | undefined, column: Column | undefined, readConditions: ConditionReader, path: string,
): Outcome<AverageTemperature | null> {
  const { liquid, average } = written
  if (liquid !== undefined) {
    const unused: readonly Finding[] = average === undefined ? [] : [{ code: 'value-not-used', path: `${path}.average`, value: average, limit: 'the liquid temperature is entered; leave it out, and it is made from the spots', clause: 'MPMS-7 average temperature' }]
    const read = andThen(readConditions({ temperature: liquid }, { temperature: `${path}.liquid`, pressure: '' }), ({ temperature }) => accepted(entered(temperature)))
    return unused.length === 0 ? read : refused(...(read.ok ? [] : read.findings), ...unused)
  }
  if ((written.spots ?? []).length === 0) {
    return refused({ code: 'missing-value', path: `${path}.liquid`, value: '', limit: 'the temperature of the liquid, or spots that it is made from', clause: 'MPMS-7 average temperature' })
  }
  return spots === undefined || column === undefined ? accepted(null) : averageTemperature(spots, column, average ?? 'by-volume', path)
}

function entered(temperature: Temperature): AverageTemperature {
  return { temperature, lines: [], exceptions: [] }
}
