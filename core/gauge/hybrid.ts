import { accepted, allOf, optional, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate, type Rounded } from '../rounding/index.ts'
import { kilogramsPerCubicMetre, kilopascalsGauge, millimetres, parseDensity, parseLength, parsePressure, readMeasured, writtenDigits, type Decimal, type Density, type Length, type Measured, type Pressure } from '../units/index.ts'
import { inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import type { HybridReading } from './hybrid-reading.ts'
import { lengthLine } from './level-reading.ts'

/** A sensor with its texts read. */
interface Sensor { readonly height: Length; readonly pressure: Pressure; readonly h: number; readonly p: number }

/** Density from head, and what it is worked from. */
export interface HeadDensity {
  /** Average density of the liquid above the bottom sensor [kg/m³], rounded to 0.1. */
  readonly density: Rounded
  readonly lines: readonly WorksheetLine[]
  /** Greatest difference from the sample's density that is not printed [kg/m³]. */
  readonly limit: Density | undefined
}

const CLAUSE = 'MPMS-3.6 density from head'

/**
 * Density of the liquid from the pressure of its head, by a level gauge and one to three pressures:
 *   ρ = [p1 − p3 − ρv g (h3 − L)] / [g (L − h1)] + ρa (h3 − h1) / (L − h1)
 * without a sensor in the vapour, which then is open to the air:
 *   ρ = p1 / [g (L − h1)] + ρa
 * A middle sensor gives the densities below and above it as well. ρa counts where each sensor breathes at its own height.
 * Refuses `out-of-range`: a sensor out of its place, free fall outside 9.7 to 9.9 m/s², a density outside 300 to 2000 kg/m³;
 * `missing-value`, `value-not-used` for the vapour; unreadable texts.
 * @param hybrid as written
 * @param levelMm level above datum [mm]; undefined where it was refused
 * @param path of the reading, for the findings
 * @source MPMS-3.6 density from head
 */
export function headDensity(hybrid: HybridReading, levelMm: Decimal | undefined, path: string): Outcome<HeadDensity | null> {
  const read = allOf<Read>({
    bottom: readSensor(hybrid.bottom, `${path}.bottom`),
    middle: hybrid.middle === undefined ? accepted(undefined) : readSensor(hybrid.middle, `${path}.middle`),
    top: hybrid.top === undefined ? accepted(undefined) : readSensor(hybrid.top, `${path}.top`),
    gravity: andThen(readMeasured(hybrid.gravity, `${path}.gravity`, { 'm/s2': ['m/s²', 'm/s^2'] }, 'free fall as 9.80665 m/s2'), (g) =>
      g.value.gte('9.7') && g.value.lte('9.9') ? accepted(g) : refused({ code: 'out-of-range', path: `${path}.gravity`, value: hybrid.gravity, limit: '9.7 to 9.9 m/s2', clause: CLAUSE })),
    vapour: optional(hybrid.vapourDensity, (text) => light(text, `${path}.vapourDensity`)),
    air: optional(hybrid.airDensity, (text) => light(text, `${path}.airDensity`)),
    limit: optional(hybrid.limit, (text) => parseDensity(text, `${path}.limit`)),
  })
  const vapour = vapourWithTop(hybrid, path)
  if (!read.ok || vapour.length > 0) return refused(...(read.ok ? [] : read.findings), ...vapour)
  if (levelMm === undefined) return accepted(null)
  const misplaced = places(read.value, levelMm, path)
  return misplaced.length > 0 ? refused(...misplaced) : compute(read.value, levelMm.toNumber() / 1000, path)
}

type Read = {
  readonly bottom: Sensor; readonly middle: Sensor | undefined; readonly top: Sensor | undefined
  readonly gravity: Measured<'m/s2'>; readonly vapour: Density | undefined; readonly air: Density | undefined; readonly limit: Density | undefined
}

function readSensor({ height, pressure }: HybridReading['bottom'], path: string): Outcome<Sensor> {
  const read = allOf<{ height: Length; pressure: Pressure }>({ height: parseLength(height, `${path}.height`), pressure: parsePressure(pressure, `${path}.pressure`) })
  return andThen(read, (both) => accepted({ ...both, h: millimetres(both.height).toNumber() / 1000, p: kilopascalsGauge(both.pressure) * 1000 }))
}

/** Density of a gas. */
function light(text: string, path: string): Outcome<Density> {
  return andThen(parseDensity(text, path), (density) => {
    const value = kilogramsPerCubicMetre(density)
    return value >= 0 && value <= 20 ? accepted(density) : refused({ code: 'out-of-range', path, value: text, limit: '0 to 20 kg/m3', clause: CLAUSE })
  })
}

function vapourWithTop({ top, vapourDensity }: HybridReading, path: string): readonly Finding[] {
  if (top !== undefined && vapourDensity === undefined) return [{ code: 'missing-value', path: `${path}.vapourDensity`, value: '', limit: 'the vapour between surface and top sensor weighs on the liquid', clause: CLAUSE }]
  if (top === undefined && vapourDensity !== undefined) return [{ code: 'value-not-used', path: `${path}.vapourDensity`, value: vapourDensity, limit: 'it counts only with a top sensor', clause: CLAUSE }]
  return []
}

function places({ bottom, middle, top }: Read, levelMm: Decimal, path: string): readonly Finding[] {
  const finding = (name: string, { height }: Sensor, limit: string): Finding => ({ code: 'out-of-range', path: `${path}.${name}.height`, value: height.text, limit, clause: CLAUSE })
  const [level, low] = [`the level, ${levelMm.toFixed()} mm`, millimetres(bottom.height)]
  return [
    ...(low.lt(levelMm) ? [] : [finding('bottom', bottom, `below ${level}`)]),
    ...(middle === undefined || (millimetres(middle.height).gt(low) && millimetres(middle.height).lt(levelMm)) ? [] : [finding('middle', middle, `above the bottom sensor and below ${level}`)]),
    ...(top === undefined || millimetres(top.height).gt(levelMm) ? [] : [finding('top', top, `above ${level}`)]),
  ]
}

function compute(read: Read, level: number, path: string): Outcome<HeadDensity> {
  const { bottom, middle, top } = read
  const g = read.gravity.value.toNumber()
  const [rhoV, rhoA] = [read.vapour, read.air].map((density) => (density === undefined ? 0 : kilogramsPerCubicMetre(density)))
  const above = (sensor: Sensor): number => top === undefined
    ? sensor.p / (g * (level - sensor.h)) + (rhoA ?? 0)
    : (sensor.p - top.p - (rhoV ?? 0) * g * (top.h - level)) / (g * (level - sensor.h)) + (rhoA ?? 0) * (top.h - sensor.h) / (level - sensor.h)
  const parts: (readonly [symbol: string, name: string, value: number, formula: string, from: readonly string[]])[] = []
  const head = top === undefined ? { formula: '', from: [] } : { formula: ' − p3 − ρv g (h3 − L)', from: ['p3', 'h3', 'ρv'] }
  const air = rhoA === 0 ? { formula: '', from: [] } : { formula: top === undefined ? ' + ρa' : ' + ρa (h3 − h1) / (L − h1)', from: ['ρa'] }
  parts.push(['ρhead', 'Density of the liquid from its head', above(bottom), `(p1${head.formula}) / [g (L − h1)]${air.formula}`, ['p1', 'h1', ...head.from, 'g', 'L', ...air.from]])
  if (middle !== undefined) {
    parts.push(
      ['ρlow', 'Density between bottom and middle sensor', (bottom.p - middle.p) / (g * (middle.h - bottom.h)) + (rhoA ?? 0), `(p1 − p2) / [g (h2 − h1)]${rhoA === 0 ? '' : ' + ρa'}`, ['p1', 'p2', 'h1', 'h2', 'g', ...air.from]],
      ['ρhigh', 'Density above the middle sensor', above(middle), `(p2${head.formula}) / [g (L − h2)]${air.formula.replace(/h1/g, 'h2')}`, ['p2', 'h2', ...head.from, 'g', 'L', ...air.from]],
    )
  }
  const wrong = parts.flatMap(([, name, value]): Finding[] => value >= 300 && value <= 2000 ? [] : [
    { code: 'out-of-range', path, value: `${discriminate('density kg/m3', value).text} kg/m3, ${name.toLowerCase()}`, limit: '300 to 2000 kg/m3; check pressures, heights and level', clause: CLAUSE },
  ])
  if (wrong.length > 0) return refused(...wrong)
  const lines = parts.map(([symbol, name, value, formula, from]) => roundedLine({ symbol, name, unit: 'kg/m3', formula, from, rounded: discriminate('density kg/m3', value), clause: CLAUSE, notes: ['lengths in metres, pressures in pascals'] }))
  return accepted({ density: discriminate('density kg/m3', above(bottom)), lines: [...inputs(read), ...lines], limit: read.limit })
}

function inputs({ bottom, middle, top, gravity, vapour, air }: Read): readonly WorksheetLine[] {
  const sensor = (number: number, name: string, one: Sensor | undefined): readonly WorksheetLine[] => one === undefined ? [] : [
    lengthLine(`h${number}`, `Height of the ${name} sensor above datum`, one.height, 'MPMS-3.6'),
    inputLine({ symbol: `p${number}`, name: `Pressure at the ${name} sensor`, value: writtenDigits(one.pressure), unit: one.pressure.unit, clause: CLAUSE }),
  ]
  const gas = (symbol: string, name: string, density: Density | undefined): readonly WorksheetLine[] => density === undefined ? [] : [
    inputLine({ symbol, name, value: writtenDigits(density), unit: density.unit, clause: CLAUSE }),
  ]
  return [
    ...sensor(1, 'bottom', bottom), ...sensor(2, 'middle', middle), ...sensor(3, 'top', top),
    inputLine({ symbol: 'g', name: 'Local free fall', value: writtenDigits(gravity), unit: 'm/s2', clause: CLAUSE }),
    ...gas('ρv', 'Density of the vapour', vapour), ...gas('ρa', 'Density of the air outside', air),
  ]
}
