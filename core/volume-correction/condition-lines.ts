import type { Citation } from '../sources.ts'
import { Decimal, psig, writtenDigits, type Pressure, type Temperature } from '../units/index.ts'
import { exactLine, inputLine, type WorksheetLine } from '../worksheet/index.ts'

/** The note on a line whose unrounded value is used further on. */
export const CARRIED_ON = 'the unrounded value is used further on (MPMS-11.1-2004 11.1.5.4)'

/**
 * A pressure as a line: what was written, and what the standard makes of it below the atmosphere; 0 in the usual unit where none
 * was stated: under the atmosphere or, for a light hydrocarbon, at its vapour pressure.
 * @source MPMS-11.1-2004 11.1.3
 * @source MPMS-11.2.2
 */
export function pressureLine(symbol: string, name: string, pressure: Pressure | null, usual: 'kPa' | 'psi', clause: Citation = 'MPMS-11.1-2004 11.1.3'): WorksheetLine {
  if (pressure === null && clause.startsWith('MPMS-11.2')) return exactLine({ symbol, name: `${name} above its vapour pressure`, unit: usual, value: new Decimal(0), formula: '0', from: [], clause, notes: ['at its vapour pressure: no pressure was stated'] })
  if (pressure === null) return exactLine({ symbol, name, unit: usual, value: new Decimal(0), formula: '0', from: [], clause, notes: ['under the atmosphere: no pressure was stated'] })
  const notes: string[] = []
  if (pressure.unit.endsWith('a')) notes.push('absolute; counted from the standard atmosphere of 101.325 kPa')
  if (psig(pressure) < 0 && clause.startsWith('MPMS-11.1')) notes.push('below the atmosphere: taken as 0 (MPMS-11.1-2004 11.1.6.1)')
  return inputLine({ symbol, name, value: writtenDigits(pressure), unit: pressure.unit, clause, notes })
}

/** Lines `t` and `P` of the liquid. @param clause where the standard limits the pressure */
export function conditionLines(temperature: Temperature, pressure: Pressure | null, clause?: Citation): readonly [WorksheetLine, WorksheetLine] {
  return [
    inputLine({ symbol: 't', name: 'Temperature of the liquid', value: writtenDigits(temperature), unit: temperature.unit, clause: 'MPMS-7' }),
    pressureLine('P', 'Pressure of the liquid', pressure, temperature.unit === 'degC' ? 'kPa' : 'psi', clause),
  ]
}
