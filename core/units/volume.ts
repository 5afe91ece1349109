import type { Outcome } from '../refusal/index.ts'
import type { Decimal } from './decimal.ts'
import { Decimal as D } from './decimal.ts'
import { printMeasured, readMeasured, type Measured, type UnitWords } from './measured-value.ts'

export const VOLUME_UNITS = ['m3', 'L', 'bbl', 'gal'] as const
export type VolumeUnit = (typeof VOLUME_UNITS)[number]
export type Volume = Measured<VolumeUnit>

/** Litres per unit, exact: 1 gal = 231 in³, 1 bbl = 42 gal. @source NIST-HB44-C */
const LITRES: { readonly [U in VolumeUnit]: string } = { m3: '1000', L: '1', bbl: '158.987294928', gal: '3.785411784' }

const WORDS: UnitWords<VolumeUnit> = { m3: ['m³'], L: ['l', 'litre', 'litres'], bbl: ['bbls', 'barrels'], gal: ['gallons', 'us gal'] }

/** Reads `1250.5 bbl`, `198.75 m3`. */
export function parseVolume(text: string, path: string): Outcome<Volume> {
  return readMeasured(text, path, WORDS, 'a volume as 198.750 m3, 1250.50 bbl, 12000 gal or 500 L')
}

/** Exact conversion, unrounded. */
export function convertVolume(value: Decimal, from: VolumeUnit, to: VolumeUnit): Decimal {
  return from === to ? value : value.times(LITRES[from]).div(LITRES[to])
}

/** Cubic metres per unit, exact. */
export function cubicMetresPer(unit: VolumeUnit): Decimal {
  return new D(LITRES[unit]).div(1000)
}

/** The canonical spelling: digits, a blank, the unit word; reading it gives the same volume back. */
export function printVolume(volume: Volume): string {
  return printMeasured(volume.value, volume.unit)
}
