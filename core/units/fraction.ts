import type { Outcome } from '../refusal/index.ts'
import { printMeasured, readMeasured, type Measured, type UnitWords } from './measured-value.ts'

/** A share, as sediment and water: per cent by volume. */
export type Percent = Measured<'%'>
const WORDS: UnitWords<'%'> = { '%': ['vol%', '% vol', 'percent', 'per cent'] }

/** Reads `0.35 %`. */
export function parsePercent(text: string, path: string): Outcome<Percent> {
  return readMeasured(text, path, WORDS, 'a share as 0.35 %')
}

/** The canonical spelling: digits, a blank, the unit word; reading it gives the same share back. */
export function printPercent(percent: Percent): string {
  return printMeasured(percent.value, percent.unit)
}
