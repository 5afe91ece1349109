import { parseInstant } from '../gauge/index.ts'
import { densities, liquidWith, type Product } from '../quantity/index.ts'
import { accepted, allOf, andThen, refused, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import { convertVolume, Decimal, parsePercent, writtenDigits, type Percent, type Temperature, type Volume } from '../units/index.ts'
import { readConditionsOf, type FamilyLiquid } from '../volume-correction/index.ts'
import { inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import { lineAtBase, readLineVolume } from './line-fill.ts'
import type { LineStanding } from './stock-input.ts'

/** Net standard volume in a line, its mass where a density stands beside it, and the lines. */
export interface LineStock { readonly nsv: Decimal; readonly mass: Decimal | null; readonly lines: readonly WorksheetLine[] }

const CLAUSE = 'MPMS-12.1.1 line fill'

/**
 * Contents of a line at base conditions: as stated, or from the observed volume, its temperature, density and S&W; no
 * pressure in the line. Free water is not looked for in a line.
 * Refuses `out-of-range` below 0, an instant that cannot be read, and what temperature, density and share refuse.
 * @param contents as written
 * @param gauge which of the two
 * @param path of the contents, for the findings
 * @source MPMS-12.1.1 line fill
 */
export function lineContents(contents: LineStanding, gauge: 'opening' | 'closing', product: Product, path: string): Outcome<LineStock> {
  const at = parseInstant(contents.at, `${path}.at`)
  const found = 'net' in contents ? stated(contents.net, gauge, product, `${path}.net`) : observed(contents, gauge, product, path)
  return andThen(allOf<{ at: unknown; found: LineStock }>({ at, found }), (read) => accepted(read.found))
}

function stated(net: string, gauge: 'opening' | 'closing', { volumeUnit: unit }: Product, path: string): Outcome<LineStock> {
  return andThen(readLineVolume(net, path), (volume) => {
    const nsv = discriminate(`volume ${unit}`, convertVolume(volume.value, volume.unit, unit))
    const symbol = gauge === 'opening' ? 'NSVL1' : 'NSVL2'
    const lines = [roundedLine({ symbol, name: `Net standard volume of the line at the ${gauge} gauge`, unit, formula: 'as stated', clause: CLAUSE, from: [], rounded: nsv, notes: [`stated as ${net}`] })]
    return accepted({ nsv: nsv.value, mass: null, lines })
  })
}

function observed(contents: Extract<LineStanding, { volume: string }>, gauge: 'opening' | 'closing', product: Product, path: string): Outcome<LineStock> {
  const paths = { temperature: `${path}.temperature`, pressure: `${path}.pressure` }
  const read = allOf<{ volume: Volume; temperature: Temperature; liquid: FamilyLiquid; sw: Percent }>({
    volume: readLineVolume(contents.volume, `${path}.volume`),
    temperature: andThen(readConditionsOf(product.commodity, product.edition, { temperature: contents.temperature }, paths), (conditions) => accepted(conditions.temperature)),
    liquid: liquidWith(product, contents.density, `${path}.density`),
    sw: readShare(contents.sedimentAndWater, `${path}.sedimentAndWater`),
  })
  return andThen(read, ({ volume, temperature, liquid, sw }) => andThen(liquid.correct({ temperature, pressure: null }, paths), (correction) => {
    const { values, lines } = lineAtBase(volume, temperature, liquid, correction, sw, product, gauge)
    const density = densities(liquid, product, liquid.lines)
    const share = [
      inputLine({ symbol: 'S&W', name: 'Sediment and water', value: writtenDigits(sw), unit: '%', clause: CLAUSE }),
      roundedLine({ symbol: 'CSW', name: 'Correction for sediment and water', unit: '', formula: '1 − S&W / 100', clause: 'MPMS-12.1.1 Table 1', from: ['S&W'], rounded: discriminate('CSW', new Decimal(1).minus(sw.value.div(100))) }),
    ]
    return accepted({ nsv: values.nsv, mass: values.mass, lines: [...[...liquid.lines, ...density.lines, ...share].map((line) => under(gauge, line)), ...lines] })
  }))
}

function readShare(text: string, path: string): Outcome<Percent> {
  return andThen(parsePercent(text, path), (share) => share.value.lessThan(0) || share.value.greaterThan(100)
    ? refused({ code: 'out-of-range', path, value: text, limit: '0 % to 100 %', clause: CLAUSE }) : accepted(share))
}

/** A line under the name of its gauge or tank, and what it is from with it. */
export function under(name: string, line: WorksheetLine): WorksheetLine {
  return { ...line, symbol: `${name}.${line.symbol}`, from: line.from.map((symbol) => `${name}.${symbol}`) }
}
