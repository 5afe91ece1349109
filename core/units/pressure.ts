import type { Outcome } from '../refusal/index.ts'
import { printMeasured, readMeasured, type Measured, type UnitWords } from './measured-value.ts'

export type PressureUnit = 'kPa' | 'bar' | 'psi' | 'kPaa' | 'bara' | 'psia'
/** A pressure: gauge unless the unit ends in `a`. */
export type Pressure = Measured<PressureUnit>

/** 1 psi = 6.894757 kPa. @source MPMS-11.1-2004 11.1.5.1 */
export const KPA_PER_PSI = 6.894757
/** Standard atmosphere [kPa]. @source MPMS-11.1-2004 11.1.3 */
export const STANDARD_ATMOSPHERE = 101.325

const WORDS: UnitWords<PressureUnit> = {
  kPa: ['kpag', 'kpa(g)'], bar: ['barg', 'bar(g)'], psi: ['psig'], kPaa: ['kpa(a)'], bara: ['bar(a)'], psia: [],
}

/** Reads `12.0 psi`, `350 kPa`, `2.5 bar`, and absolute pressures `101.3 kPaa`. */
export function parsePressure(text: string, path: string): Outcome<Pressure> {
  return readMeasured(text, path, WORDS, 'a pressure as 0 psi, 350 kPa, 2.5 bar, or absolute as 101.3 kPaa')
}

/** Gauge pressure [kPa]; an absolute pressure is taken over the standard atmosphere. @source MPMS-11.1-2004 11.1.5.1 */
export function kilopascalsGauge(pressure: Pressure): number {
  const value = pressure.value.toNumber()
  switch (pressure.unit) {
    case 'kPa': return value
    case 'bar': return value * 100
    case 'psi': return value * KPA_PER_PSI
    case 'kPaa': return value - STANDARD_ATMOSPHERE
    case 'bara': return value * 100 - STANDARD_ATMOSPHERE
    case 'psia': return value * KPA_PER_PSI - STANDARD_ATMOSPHERE
  }
}

/**
 * Gauge pressure [psi]: P psi = P kPa / 6.894757 = P bar / 0.06894757.
 * @source MPMS-11.1-2004 11.1.5.1
 */
export function psig(pressure: Pressure): number {
  if (pressure.unit === 'psi') return pressure.value.toNumber()
  if (pressure.unit === 'bar') return pressure.value.toNumber() / 0.06894757
  return kilopascalsGauge(pressure) / KPA_PER_PSI
}

/** The canonical spelling: digits, a blank, the unit word; reading it gives the same pressure back. */
export function printPressure(pressure: Pressure): string {
  return printMeasured(pressure.value, pressure.unit)
}
