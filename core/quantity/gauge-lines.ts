import type { ParsedSnapshot } from '../gauge/index.ts'
import { writtenDigits, type Length } from '../units/index.ts'
import { exactLine, inputLine, type WorksheetLine } from '../worksheet/index.ts'

/** Lines of what was read with the tape: readings, reference gauge height, innage, water cut. @source MPMS-3.1A */
export function gaugeLines(read: ParsedSnapshot): readonly WorksheetLine[] {
  const height = lengthLine('RGH', 'Reference gauge height of the certificate', read.referenceHeight, 'MPMS-3.1A reference gauge height')
  const cut = lengthLine('WC', 'Free-water cut above datum', read.waterCut, 'MPMS-3.1A free water')
  const { reading } = read
  const level = { symbol: 'L', name: 'Innage above datum', unit: 'mm', value: read.levelMm, clause: 'MPMS-3.1A innage and ullage' } as const
  if (reading.by === 'innage') {
    return [lengthLine('INN', 'Innage as read', reading.innage, 'MPMS-3.1A innage gauging'), height, exactLine({ ...level, formula: 'INN', from: ['INN'] }), cut]
  }
  const observed = reading.observedReferenceHeight
  return [
    lengthLine('ULL', 'Ullage as read', reading.ullage, 'MPMS-3.1A ullage gauging'),
    height,
    ...(observed === undefined ? [] : [lengthLine('RGHobs', 'Reference gauge height as read', observed, 'MPMS-3.1A reference gauge height')]),
    exactLine({ ...level, formula: 'RGH − ULL', from: ['RGH', 'ULL'] }),
    cut,
  ]
}

/** A length as written; feet and inches keep their words and have no unit of their own. */
function lengthLine(symbol: string, name: string, length: Length, clause: 'MPMS-3.1A' | `MPMS-3.1A ${string}`): WorksheetLine {
  const written = length.unit === 'ft-in' ? { value: length.text.trim(), unit: '' } : { value: writtenDigits(length), unit: length.unit }
  return inputLine({ symbol, name, ...written, clause })
}
