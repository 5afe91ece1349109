import type { Content, TableCell } from 'pdfmake/interfaces.js'
import type { GaugeSnapshot } from '../../../core/gauge/index.ts'
import type { Ticket } from '../../../core/ticket/index.ts'
import type { Basis } from '../ticket-basis.ts'
import { blockHeading, head, RULED, TINT } from './style.ts'
import { printedInstant } from './words.ts'

type Row = readonly [string, string, string]
const INSTRUMENTS: { readonly [I in GaugeSnapshot['density']['instrument']]: string } = {
  hydrometer: 'hydrometer', 'density-meter': 'density meter', base: 'at base conditions',
}

/** Both gauges side by side, every value as it was written. */
export function gauges(ticket: Ticket, basis: Basis): Content[] {
  const { opening, closing, terminal } = ticket
  const both = (label: string, read: (gauge: GaugeSnapshot) => string | undefined, absent = 'not measured'): Row[] => {
    const [first, last] = [read(opening), read(closing)]
    return first === undefined && last === undefined ? [] : [[label, first ?? absent, last ?? absent]]
  }
  const rows: readonly Row[] = [
    ...both('Time', (gauge) => printedInstant(gauge.at, terminal.zone)),
    ...both('Gauged by', (gauge) => gauge.by),
    ...both('Level', ({ level }) => ('innage' in level ? `${level.innage} innage` : `${level.ullage} ullage`)),
    ...both('Reference gauge height, observed', (gauge) => ('ullage' in gauge.level ? gauge.level.observedReferenceHeight : undefined)),
    ...both('Free-water cut', (gauge) => gauge.waterCut),
    ...both('Liquid temperature', (gauge) => gauge.temperatures.liquid),
    ...both('Temperature spots', (gauge) => gauge.temperatures.spots?.map((spot) => `${spot.temperature} at ${spot.level}`).join('; ')),
    ...both('Ambient temperature', (gauge) => gauge.temperatures.ambient),
    ...both('Pressure above the liquid', (gauge) => gauge.pressure),
    ...both('Density', (gauge) => densityWords(gauge.density)),
    ...both('Sediment and water', (gauge) => gauge.sedimentAndWater),
    ...both('Remarks', (gauge) => gauge.remarks, 'none'),
  ]
  const lines = rows.map(([label, first, last]): TableCell[] => [{ text: label, color: TINT }, first, last])
  return [
    blockHeading('Gauges, as written', `${basis.tank.datum}; reference gauge height ${basis.tank.referenceGaugeHeight}`),
    { table: { headerRows: 1, dontBreakRows: true, widths: [118, '*', '*'], body: [[head(''), head('Opening'), head('Closing')], ...lines] }, layout: RULED },
  ]
}

function densityWords({ value, temperature, pressure, instrument }: GaugeSnapshot['density']): string {
  const conditions = [temperature, pressure].filter((part) => part !== undefined).join(', ')
  return `${value}${conditions === '' ? '' : ` at ${conditions}`}, ${INSTRUMENTS[instrument]}`
}

/** Contents of the transfer line at both gauges, where it was not equally full. */
export function lineFill({ lineFill: fill }: Ticket): Content[] {
  if (fill === undefined) return []
  return [
    blockHeading('Line fill, as written'),
    { table: { headerRows: 1, widths: [118, '*', '*'], body: [
      [head(''), head('Opening'), head('Closing')],
      [{ text: 'Observed volume', color: TINT }, fill.opening.volume, fill.closing.volume],
      [{ text: 'Temperature', color: TINT }, fill.opening.temperature, fill.closing.temperature],
    ] }, layout: RULED },
  ]
}
