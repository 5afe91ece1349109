import { accepted, refused, andThen, type Finding, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import { temperatureIn, volumeAtLevel, type CapacityTable } from '../tank/index.ts'
import { Decimal, millimetres, writtenDigits, type Temperature } from '../units/index.ts'
import { inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import type { Spot } from './readings.ts'
import { judgeSpots } from './spot-count.ts'

/** What the average is made over. */
export interface Column {
  readonly levelMm: Decimal
  readonly waterMm: Decimal
  readonly table: CapacityTable
}

/** The average temperature of the liquid with the lines that it is worked from. */
export interface AverageTemperature {
  readonly temperature: Temperature
  readonly lines: readonly WorksheetLine[]
  readonly exceptions: readonly Finding[]
}

const CLAUSE = 'MPMS-7 average temperature'

/**
 * Average temperature of the liquid from spots.
 *  - by volume: each spot stands for the layer from half way to the spot below to half way to the spot above, the lowest down to
 *    the free water, the highest up to the surface; layers by the capacity table: t = Σ T V / Σ V
 *  - plain, where the contract says so: t = Σ T / n
 * Rounded to 0.1 °F or 0.05 °C, in the unit of the first spot. Refuses `out-of-range` for a spot in the water or two at one level,
 * `level-outside-table`; `spots-too-few` and `spots-differ` are exceptions.
 * @param spots each within the liquid, at least one
 * @param column level, top of the free water [mm] and capacity table
 * @param by how they are averaged
 * @param path of the temperatures, for the findings
 * @source MPMS-7 average temperature
 */
export function averageTemperature(spots: readonly Spot[], column: Column, by: 'by-volume' | 'plain', path: string): Outcome<AverageTemperature> {
  const [first] = spots
  if (first === undefined) throw new Error('an average needs a spot')
  const { unit } = first.temperature
  const upwards = spots.map((spot, at) => ({ at, mm: millimetres(spot.level), spot, value: temperatureIn(spot.temperature, unit) })).sort((a, b) => a.mm.comparedTo(b.mm))
  const wrong = upwards.flatMap(({ at, mm, spot }, i): Finding[] => {
    const finding = (limit: string): Finding[] => [{ code: 'out-of-range', path: `${path}.spots.${at}.level`, value: spot.level.text, limit, clause: 'MPMS-7 spot temperatures' }]
    if (mm.lte(column.waterMm) && !column.waterMm.isZero()) return finding(`above the free water, ${column.waterMm.toFixed()} mm`)
    return upwards[i - 1]?.mm.eq(mm) === true ? finding('a level of its own for each spot') : []
  })
  if (wrong.length > 0) return refused(...wrong)
  const exceptions = judgeSpots(upwards.map(({ value }) => value), unit, column.levelMm.minus(column.waterMm), `${path}.spots`)
  const inputs = upwards.map(({ spot }, i) => spotLine(i + 1, spot))
  const symbols = upwards.map((_, i) => `T${i + 1}`)
  const finish = (value: Decimal, formula: string, layers: readonly WorksheetLine[]): AverageTemperature => {
    const rounded = discriminate(`temperature ${unit}`, value)
    const from = [...symbols, ...layers.map(({ symbol }) => symbol)]
    const name = by === 'plain' ? 'Average temperature, plain mean of the spots' : 'Average temperature, each layer by its volume'
    const line = roundedLine({ symbol: 'Tavg', name, unit, formula, from, rounded, clause: CLAUSE })
    return { temperature: { text: `${rounded.text} ${unit}`, value: rounded.value, unit }, lines: [...inputs, ...layers, line], exceptions }
  }
  if (by === 'plain') return accepted(finish(sum(upwards.map(({ value }) => value)).div(upwards.length), `(${symbols.join(' + ')}) / ${symbols.length}`, []))
  return andThen(layersOf(upwards.map(({ mm }) => mm), column, `${path}.spots`), (layers) => {
    const total = sum(layers.map(({ volume }) => volume))
    if (total.isZero()) return refused({ code: 'out-of-range', path: `${path}.spots`, value: '0', limit: 'layers that hold some liquid', clause: CLAUSE })
    const weighted = sum(layers.map(({ volume }, i) => volume.times(upwards[i]?.value ?? 0)))
    const terms = layers.map((_, i) => `T${i + 1} × VT${i + 1}`)
    return accepted(finish(weighted.div(total), `(${terms.join(' + ')}) / (${layers.map(({ line }) => line.symbol).join(' + ')})`, layers.map(({ line }) => line)))
  })
}

function spotLine(number: number, { level, temperature }: Spot): WorksheetLine {
  return inputLine({ symbol: `T${number}`, name: `Spot ${number} from the bottom, at ${level.text}`, value: writtenDigits(temperature), unit: temperature.unit, clause: 'MPMS-7 spot temperatures' })
}

interface Layer { readonly volume: Decimal; readonly line: WorksheetLine }

/** The volume of each layer, rounded as it stands on its line. */
function layersOf(levels: readonly Decimal[], { levelMm, waterMm, table }: Column, path: string): Outcome<readonly Layer[]> {
  const lowest = Decimal.max(waterMm, new Decimal(table.rows[0]?.[0] ?? 0))
  const bounds = [lowest, ...levels.slice(1).map((mm, i) => mm.plus(levels[i] ?? mm).div(2)), levelMm]
  const layers: Layer[] = []
  for (let i = 0; i < levels.length; i += 1) {
    const [from, to] = [Decimal.max(lowest, bounds[i] ?? lowest), Decimal.max(lowest, bounds[i + 1] ?? levelMm)]
    const [below, above] = [volumeAtLevel(table, from, path), volumeAtLevel(table, to, path)]
    if (!below.ok) return below
    if (!above.ok) return above
    const rounded = discriminate(`volume ${table.volumeUnit}`, above.value.volume.minus(below.value.volume))
    const line = roundedLine({ symbol: `VT${i + 1}`, name: `Volume of the layer of spot ${i + 1}`, unit: table.volumeUnit, formula: `V(${to.toFixed()} mm) − V(${from.toFixed()} mm)`, from: [], rounded, clause: CLAUSE, notes: ['from the capacity table'] })
    layers.push({ volume: rounded.value, line })
  }
  return accepted(layers)
}

function sum(values: readonly Decimal[]): Decimal {
  return values.reduce((total, value) => total.plus(value), new Decimal(0))
}
