import { lengthLine, type ParsedSnapshot } from '../gauge/index.ts'
import { writtenDigits } from '../units/index.ts'
import { exactLine, inputLine, type WorksheetLine } from '../worksheet/index.ts'

/** Lines of what was read with the tape: readings, reference gauge height, innage, water cut or the water as it was entered. @source MPMS-3.1A */
export function gaugeLines(read: ParsedSnapshot): readonly WorksheetLine[] {
  const height = lengthLine('RGH', 'Reference gauge height of the certificate', read.referenceHeight, 'MPMS-3.1A reference gauge height')
  const { water } = read
  const cut = water.by === 'cut' ? lengthLine('WC', 'Free-water cut above datum', water.length, 'MPMS-3.1A free water')
    : inputLine({ symbol: 'FWe', name: 'Free water, entered as a volume', value: writtenDigits(water.volume), unit: water.volume.unit, clause: 'MPMS-12.1.1 free water', notes: [`not gauged; from ${water.origin}`] })
  const { reading } = read
  const { symbol } = reading.found
  const level = { symbol: 'L', name: 'Innage above datum', unit: 'mm', value: read.levelMm, clause: 'MPMS-3.1A innage and ullage' } as const
  if (reading.by === 'innage') return [...reading.found.lines, height, exactLine({ ...level, formula: symbol, from: [symbol] }), cut]
  const observed = reading.observedReferenceHeight
  return [
    ...reading.found.lines,
    height,
    ...(observed === undefined ? [] : [lengthLine('RGHobs', 'Reference gauge height as read', observed, 'MPMS-3.1A reference gauge height')]),
    exactLine({ ...level, formula: `RGH − ${symbol}`, from: ['RGH', symbol] }),
    cut,
  ]
}

/** The lines of the liquid temperature: as it was entered, or made from the spots and taken over from `Tavg`. @source MPMS-7 average temperature */
export function temperatureLines({ temperatureLines: made }: ParsedSnapshot, entered: readonly WorksheetLine[]): readonly WorksheetLine[] {
  return made.length === 0 ? entered : [...made, ...entered.map((line) => takenOver(line, 'Tavg'))]
}

/** A line for a value that was not written but stands on another line. */
export function takenOver(line: WorksheetLine, from: string): WorksheetLine {
  return { ...line, rounding: 'not rounded', formula: from, from: [from] }
}
