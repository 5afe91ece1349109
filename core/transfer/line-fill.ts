import { readSnapshot, type GaugeSnapshot } from '../gauge/index.ts'
import { densities, liquidOf, massOfVolume, multipliers, type Product } from '../quantity/index.ts'
import { accepted, allOf, refused, andThen, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import type { Tank } from '../tank/index.ts'
import { convertVolume, Decimal, parseVolume, writtenDigits, type Percent, type Temperature, type Volume } from '../units/index.ts'
import { readConditionsOf, type Correction, type FamilyLiquid } from '../volume-correction/index.ts'
import { inputLine, roundedLine, type WorksheetLine } from '../worksheet/index.ts'
import type { MovedValues } from './moved.ts'

/** Observed contents of the transfer line at one gauge. */
export interface LineContents { readonly volume: string; readonly temperature: string }

/** Standard quantities of the contents of a line, and their lines. */
export interface LineQuantity { readonly values: MovedValues; readonly lines: readonly WorksheetLine[] }

/** The two gauges as they stand in symbols and names. */
const GAUGES = { opening: '1', closing: '2' } as const
const CLAUSE = 'MPMS-12.1.1 line fill'

/**
 * Contents of the transfer line at one gauge, at base conditions: base density and S&W of the tank's snapshot at that
 * gauge, no pressure in the line. Free water is not looked for in a line.
 *   GSV = V × CTPL;  NSV = GSV × CSW;  m = NSV × ρb;  W = NSV × D
 * Refuses `out-of-range` below 0, and what temperature, volume and density refuse.
 * @param contents observed volume in any unit and its temperature
 * @param gauge which of the two
 * @param tank that was gauged: density and S&W may be made from its readings
 * @source MPMS-12.1.1 line fill
 */
export function lineQuantity(contents: LineContents, gauge: keyof typeof GAUGES, product: Product, snapshot: GaugeSnapshot, tank: Tank): Outcome<LineQuantity> {
  const path = `lineFill.${gauge}`
  const at = { temperature: `${path}.temperature`, pressure: `${path}.pressure` }
  const read = allOf<{ volume: Volume; temperature: Temperature; liquid: FamilyLiquid; sw: Percent }>({
    volume: readLineVolume(contents.volume, `${path}.volume`),
    temperature: andThen(readConditionsOf(product.commodity, product.edition, { temperature: contents.temperature }, at), (read) => accepted(read.temperature)),
    liquid: liquidOf(product, snapshot, tank, gauge),
    sw: andThen(readSnapshot(snapshot, { tank, readConditions: (written, paths) => readConditionsOf(product.commodity, product.edition, written, paths) }, gauge), ({ sedimentAndWater }) => accepted(sedimentAndWater)),
  })
  return andThen(read, ({ volume, temperature, liquid, sw }) => andThen(liquid.correct({ temperature, pressure: null }, at), (correction) =>
    accepted(lineAtBase(volume, temperature, liquid, correction, sw, product, gauge))))
}

/** Contents of a line: 0 or more. */
export function readLineVolume(text: string, path: string): Outcome<Volume> {
  return andThen(parseVolume(text, path), (volume) => volume.value.isNegative() && !volume.value.isZero()
    ? refused({ code: 'out-of-range', path, value: text, limit: '0 or more', clause: CLAUSE })
    : accepted(volume))
}

/**
 * Contents of a line at base conditions from what was observed, with their lines; they stand on `opening.…` or `closing.…`
 * lines of the liquid.
 *   GSV = V × CTPL;  NSV = GSV × CSW;  m = NSV × ρb;  W = NSV × D
 * @source MPMS-12.1.1 line fill
 */
export function lineAtBase(volume: Volume, temperature: Temperature, liquid: FamilyLiquid, correction: Correction, sw: Percent, product: Product, gauge: keyof typeof GAUGES): LineQuantity {
  const { volumeUnit: unit, massUnit } = product
  const quantity = `volume ${unit}` as const
  const at = GAUGES[gauge]
  const { ctpl } = correction
  const used = multipliers(correction)
  const csw = discriminate('CSW', new Decimal(1).minus(sw.value.div(100)))
  const density = densities(liquid, product, liquid.lines)
  const gsv = discriminate(quantity, convertVolume(volume.value, volume.unit, unit).times(used.ctpl))
  const nsv = discriminate(quantity, gsv.value.times(csw.value))
  const mass = discriminate(`mass ${massUnit}`, massOfVolume(nsv.value, unit, density.vacuum.value, massUnit))
  const weight = discriminate(`mass ${massUnit}`, massOfVolume(nsv.value, unit, density.air.value, massUnit))
  const from = (symbol: string): string => `${gauge}.${symbol}`
  const lines = [
    inputLine({ symbol: `VL${at}`, name: `Contents of the line at the ${gauge} gauge, as observed`, value: writtenDigits(volume), unit: volume.unit, clause: CLAUSE }),
    inputLine({ symbol: `tL${at}`, name: `Temperature of the line at the ${gauge} gauge`, value: writtenDigits(temperature), unit: temperature.unit, clause: CLAUSE }),
    roundedLine({ symbol: `CTPL${at}`, name: `CTPL of the line at the ${gauge} gauge`, unit: '', formula: `CTL at tL${at} and atmospheric pressure`, clause: correction.clause, from: [from(density.vacuumSymbol), `tL${at}`], rounded: ctpl }),
    roundedLine({ symbol: `GSVL${at}`, name: `Gross standard volume of the line at the ${gauge} gauge`, unit, formula: `VL${at} × CTPL${at}`, clause: CLAUSE, from: [`VL${at}`, `CTPL${at}`], rounded: gsv, notes: used.notes }),
    roundedLine({ symbol: `NSVL${at}`, name: `Net standard volume of the line at the ${gauge} gauge`, unit, formula: `GSVL${at} × ${from('CSW')}`, clause: CLAUSE, from: [`GSVL${at}`, from('CSW')], rounded: nsv }),
    roundedLine({ symbol: `MASSL${at}`, name: `Mass of the line at the ${gauge} gauge`, unit: massUnit, formula: `NSVL${at} × ${from(density.vacuumSymbol)}`, clause: 'MPMS-11.5 mass and weight', from: [`NSVL${at}`, from(density.vacuumSymbol)], rounded: mass }),
    roundedLine({ symbol: `WEIGHTL${at}`, name: `Weight in air of the line at the ${gauge} gauge`, unit: massUnit, formula: `NSVL${at} × ${from('D')}`, clause: 'MPMS-11.5 mass and weight', from: [`NSVL${at}`, from('D')], rounded: weight }),
  ]
  return { values: { gsv: gsv.value, nsv: nsv.value, mass: mass.value, weight: weight.value, water: new Decimal(0) }, lines }
}
