import { parseInstant, type GaugeSnapshot } from '../gauge/index.ts'
import { staticQuantity, type Product, type Worksheet } from '../quantity/index.ts'
import { accepted, allOf, andThen, eachOnce, refused, type Outcome } from '../refusal/index.ts'
import { discriminate } from '../rounding/index.ts'
import { Decimal, type MassUnit, type VolumeUnit } from '../units/index.ts'
import { exactLine, type Exception, type Quantity, type WorksheetLine } from '../worksheet/index.ts'
import { lineContents, under, type LineStock } from './line-contents.ts'
import { tankChange, valuesOf } from './moved.ts'
import type { FilledLine, GaugedTank, RegradedTank, StockLegResult } from './stock-input.ts'

/** One leg with what it says on the worksheet. */
export interface Leg {
  readonly result: StockLegResult
  readonly at: string
  readonly nsv: Decimal
  readonly unit: VolumeUnit
  readonly mass: Decimal | null
  readonly massUnit: MassUnit
  /** Symbols of its lines, for the sums. */
  readonly symbols: { readonly nsv: string; readonly mass: string }
  readonly lines: readonly WorksheetLine[]
  readonly exceptions: readonly Exception[]
}

/** Closing later than opening; an instant that cannot be read is refused with what it stands in. */
export function inOrder(opening: string, closing: string, path: string): Outcome<null> {
  const first = parseInstant(opening, `${path}.opening.at`)
  const second = parseInstant(closing, `${path}.closing.at`)
  if (!first.ok || !second.ok || second.value.order > first.value.order) return accepted(null)
  return refused({ code: 'closing-not-after-opening', path: `${path}.closing.at`, value: closing, limit: opening, clause: 'HOUSE stock movements' })
}

/**
 * A tank by both its gauges: booked is what its own gauges say, closing − opening.
 * Refuses what {@link staticQuantity} refuses at both gauges, and `closing-not-after-opening`.
 * @source MPMS-12.1.1 transfer quantity
 */
export function gaugedLeg({ tank, product, opening, closing }: GaugedTank, path: string): Outcome<Leg> {
  const read = allOf<{ opening: Worksheet; closing: Worksheet; order: null }>({
    opening: sheet(tank, product, opening, `${path}.opening`, path), closing: sheet(tank, product, closing, `${path}.closing`, path),
    order: inOrder(opening.at, closing.at, path),
  })
  if (!read.ok) return refused(...eachOnce(read.findings))
  const { value } = read
  const change = tankChange(valuesOf(value.opening.quantity), valuesOf(value.closing.quantity), product)
  const { values, moved } = change
  return accepted({
    result: {
      place: 'tank', code: tank.code, product: product.code, opening, closing, openingWorksheet: value.opening, closingWorksheet: value.closing,
      nsv: moved.nsv, mass: moved.mass, ...(!values.water.isZero() && { water: moved.water }),
    },
    at: closing.at, nsv: values.nsv, unit: product.volumeUnit, mass: values.mass, massUnit: product.massUnit,
    symbols: { nsv: `${tank.code}.ΔNSV`, mass: `${tank.code}.ΔMASS` },
    lines: change.lines.map((line) => under(tank.code, line)), exceptions: [...value.opening.exceptions, ...value.closing.exceptions],
  })
}

/** A static quantity whose findings about tank and product stand under their tank. */
function sheet(tank: GaugedTank['tank'], product: Product, snapshot: GaugeSnapshot, path: string, above: string): Outcome<Worksheet> {
  const found = staticQuantity(tank, product, snapshot, path)
  return found.ok ? found : refused(...found.findings.map((finding) => (/^(tank|product)(\.|$)/.test(finding.path) ? { ...finding, path: `${above}.${finding.path}` } : finding)))
}

/**
 * A tank at the one gauge of a regrade, under the name that it gives up or that it takes.
 * @param side `from` books − what was gauged, `to` books +
 * @source HOUSE stock movements
 */
export function regradedLeg({ tank, product, gauge }: RegradedTank, side: 'from' | 'to'): Outcome<Leg> {
  const sign = side === 'from' ? -1 : 1
  return andThen(sheet(tank, product, gauge, `${side}.gauge`, side), (worksheet) => {
    const { nsv, mass } = worksheet.quantity
    const { volumeUnit: unit, massUnit } = product
    const of = (value: Decimal): Decimal => value.times(sign)
    const values = { nsv: of(new Decimal(nsv.value)), mass: of(new Decimal(mass.value)) }
    const line = (symbol: string, name: string, value: Decimal, text: string, unitWord: string): WorksheetLine =>
      ({ ...exactLine({ symbol: `${product.code}.${symbol}`, name, value, unit: unitWord, formula: `${sign < 0 ? '−' : ''}${symbol.slice(1)} as gauged`, from: [`${side}.${symbol.slice(1)}`], clause: 'HOUSE stock movements' }), value: text, unrounded: text })
    const texts = { nsv: discriminate(`volume ${unit}`, values.nsv).text, mass: discriminate(`mass ${massUnit}`, values.mass).text }
    return accepted({
      result: {
        place: 'tank', code: tank.code, product: product.code,
        ...(side === 'from' ? { opening: gauge, openingWorksheet: worksheet } : { closing: gauge, closingWorksheet: worksheet }),
        nsv: { value: texts.nsv, unit }, mass: { value: texts.mass, unit: massUnit },
      },
      at: gauge.at, nsv: values.nsv, unit, mass: values.mass, massUnit, symbols: { nsv: `${product.code}.ΔNSV`, mass: `${product.code}.ΔMASS` },
      lines: [
        line('ΔNSV', `Net standard volume ${sign < 0 ? 'no longer' : 'now'} ${product.name}`, values.nsv, texts.nsv, unit),
        line('ΔMASS', `Mass in vacuum ${sign < 0 ? 'no longer' : 'now'} ${product.name}`, values.mass, texts.mass, massUnit),
      ],
      exceptions: worksheet.exceptions,
    })
  })
}

/**
 * A line by its contents before and after, at base conditions.
 * Refuses what {@link lineContents} refuses, and `closing-not-after-opening`.
 * @source MPMS-12.1.1 line fill
 */
export function lineLeg({ code, product, opening, closing }: FilledLine, path: string): Outcome<Leg> {
  const read = allOf<{ opening: LineStock; closing: LineStock; order: null }>({
    opening: lineContents(opening, 'opening', product, `${path}.opening`), closing: lineContents(closing, 'closing', product, `${path}.closing`),
    order: inOrder(opening.at, closing.at, path),
  })
  return andThen(read, ({ opening: before, closing: after }) => {
    const { volumeUnit: unit, massUnit } = product
    const volume = (value: Decimal): Quantity => ({ value: discriminate(`volume ${unit}`, value).text, unit })
    const nsv = after.nsv.minus(before.nsv)
    const mass = before.mass === null || after.mass === null ? null : after.mass.minus(before.mass)
    const text = volume(nsv)
    const massText = mass === null ? null : { value: discriminate(`mass ${massUnit}`, mass).text, unit: massUnit }
    const line = (symbol: string, name: string, value: Decimal, { value: printed, unit: word }: Quantity, from: readonly string[]): WorksheetLine =>
      ({ ...exactLine({ symbol, name, value, unit: word, formula: from.toReversed().join(' − '), from, clause: 'MPMS-12.1.1 line fill' }), value: printed, unrounded: printed })
    const own = [
      line('ΔNSVL', 'Change of net standard volume in the line', nsv, text, ['NSVL1', 'NSVL2']),
      ...(mass === null || massText === null ? [] : [line('ΔMASSL', 'Change of mass in vacuum in the line', mass, massText, ['MASSL1', 'MASSL2'])]),
    ]
    return accepted({
      result: { place: 'line', code, product: product.code, contents: { opening, closing }, stated: { opening: volume(before.nsv), closing: volume(after.nsv) }, nsv: text, ...(massText !== null && { mass: massText }) },
      at: closing.at, nsv, unit, mass, massUnit, symbols: { nsv: `${code}.ΔNSVL`, mass: `${code}.ΔMASSL` },
      lines: [...before.lines, ...after.lines, ...own].map((one) => under(code, one)), exceptions: [],
    })
  })
}
