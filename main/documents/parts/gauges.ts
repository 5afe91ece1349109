import type { Content, TableCell } from 'pdfmake/interfaces.js'
import type { GaugeSnapshot, WrittenDensity, WrittenLevel } from '../../../core/gauge/index.ts'
import type { Ticket } from '../../../core/ticket/index.ts'
import type { Basis } from '../ticket-basis.ts'
import { blockHeading, head, RULED, TINT } from './style.ts'
import { printedInstant } from './words.ts'

type Row = readonly [string, string, string]
const INSTRUMENTS: { readonly [I in WrittenDensity['instrument']]: string } = {
  hydrometer: 'hydrometer', 'density-meter': 'density meter', base: 'at base conditions', probe: 'hydrostatic probe',
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
    ...both('Level', ({ level, tape }) => levelWords(level, tape)),
    ...both('Level read by', ({ instrument }) => (instrument === undefined ? undefined : `automatic gauge ${instrument.id}, status ${instrument.status}`), 'hand tape'),
    ...both('Reference gauge height, observed', (gauge) => ('innage' in gauge.level ? undefined : gauge.level.observedReferenceHeight)),
    ...both('Free-water cut', (gauge) => gauge.waterCut, 'entered as a volume'),
    ...both('Free water', ({ waterVolume }) => waterVolume && `${waterVolume.volume}, entered: ${waterVolume.origin}`, 'from the cut'),
    ...both('Liquid temperature', (gauge) => gauge.temperatures.liquid ?? madeFrom(gauge.temperatures.average)),
    ...both('Temperature spots', (gauge) => gauge.temperatures.spots?.map((spot) => `${spot.temperature} at ${spot.level}`).join('; ')),
    ...both('Ambient temperature', (gauge) => gauge.temperatures.ambient),
    ...both('Pressure above the liquid', (gauge) => gauge.pressure),
    ...both('Vapour', ({ vapour }) => vapour && `${vapour.temperature}${vapour.compressibility === undefined ? '' : `, Z ${vapour.compressibility} as agreed`}`),
    ...both('Density', (gauge) => (gauge.density === undefined ? undefined : densityWords(gauge.density)), 'from samples, head or the product'),
    ...both('Samples', (gauge) => gauge.samples?.map(sampleWords).join('; '), 'none'),
    ...both('Pressures beside the level', (gauge) => gauge.hybrid && pressureWords(gauge.hybrid), 'none'),
    ...both('Sediment and water', (gauge) => gauge.sedimentAndWater, 'from samples'),
    ...both('Remarks', (gauge) => gauge.remarks, 'none'),
  ]
  const lines = rows.map(([label, first, last]): TableCell[] => [{ text: label, color: TINT }, first, last])
  return [
    blockHeading('Gauges, as written', `${basis.tank.datum}; reference gauge height ${basis.tank.referenceGaugeHeight}`),
    { table: { headerRows: 1, dontBreakRows: true, widths: [118, '*', '*'], body: [[head(''), head('Opening'), head('Closing')], ...lines] }, layout: RULED },
  ]
}

function levelWords(level: WrittenLevel, tape: GaugeSnapshot['tape']): string {
  const corrected = tape === undefined ? '' : `; tape ${[tape.certificate, tape.temperature, tape.standardAt && `standardised at ${tape.standardAt}`, tape.correction && `certificate ${tape.correction}`].filter(Boolean).join(', ')}`
  if ('innage' in level) return `${level.innage} innage${corrected}`
  if ('ullage' in level) return `${level.ullage} ullage${corrected}`
  return `${level.by}, readings ${level.readings.map(({ read, bob }) => (bob === undefined ? read : `${read} with ${tape?.bob ?? ''} bob ${bob}`)).join('; ')}${corrected}`
}

function madeFrom(average: GaugeSnapshot['temperatures']['average']): string {
  return average === 'plain' ? 'plain mean of the spots' : 'from the spots, by volume'
}

function sampleWords({ from, number, at, density, sedimentAndWater }: NonNullable<GaugeSnapshot['samples']>[number]): string {
  return `${from} ${number} of ${at}: ${densityWords(density)}, S&W ${sedimentAndWater}`
}

function pressureWords({ bottom, middle, top }: NonNullable<GaugeSnapshot['hybrid']>): string {
  return [bottom, middle, top].flatMap((sensor) => (sensor === undefined ? [] : [`${sensor.pressure} at ${sensor.height}`])).join('; ')
}

function densityWords({ value, temperature, pressure, instrument }: WrittenDensity): string {
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
