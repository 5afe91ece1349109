import { accepted, allOf, andThen, refused, type Outcome } from '../refusal/index.ts'
import { discriminate, type Rounded } from '../rounding/index.ts'
import { Decimal, parseVolume, type VolumeUnit } from '../units/index.ts'
import { exactLine, type WorksheetLine } from '../worksheet/index.ts'
import type { StockInput, StockResult } from './stock-input.ts'
import { gaugedLeg, type Leg } from './stock-legs.ts'
import { resultOf } from './stock-result.ts'

const CLAUSE = 'HOUSE stock movements'

/**
 * Free water drawn off a tank, by its gauges before and after. Booked is the net oil that was stated to have gone with
 * it, none where nothing was stated; what else the tank changed by is left to show as unbooked.
 *   UNBOOKED = ΔNSV + net oil drawn
 * Refuses what the static quantity refuses, `water-not-drawn`, and for the net oil `unreadable-value`,
 * `unit-not-accepted`, `out-of-range`.
 * @source HOUSE stock movements
 */
export function waterDrawOff({ tank, netOil }: Extract<StockInput, { kind: 'water-draw-off' }>): Outcome<StockResult> {
  const { volumeUnit: unit } = tank.product
  const read = allOf<{ leg: Leg; oil: Rounded }>({ leg: gaugedLeg(tank, 'tank'), oil: netOilDrawn(netOil ?? `0 ${unit}`, unit) })
  return andThen(read, ({ leg, oil }) => {
    const water = new Decimal(leg.result.water?.value ?? 0)
    if (water.isZero() || water.isPositive()) {
      return refused({ code: 'water-not-drawn', path: 'tank.closing.waterCut', value: `${discriminate(`volume ${unit}`, water).text} ${unit}`, limit: 'a water draw-off leaves less free water than before', clause: CLAUSE })
    }
    return accepted(booked(leg, oil, unit))
  })
}

function booked(leg: Leg, oil: Rounded, unit: VolumeUnit): StockResult {
  const { code } = leg.result
  const nsv = oil.value.negated()
  const rest = leg.nsv.plus(oil.value)
  const text = (value: Decimal): string => discriminate(`volume ${unit}`, value).text
  const exact = (symbol: string, name: string, value: Decimal, formula: string, from: readonly string[]): WorksheetLine =>
    ({ ...exactLine({ symbol: `${code}.${symbol}`, name, value, unit, formula, from, clause: CLAUSE }), value: text(value), unrounded: text(value) })
  const lines = [
    ...leg.lines,
    exact('NETOIL', 'Net oil drawn with the water', oil.value, 'as stated', []),
    exact('BOOKED', 'Booked change of net standard volume', nsv, `−${code}.NETOIL`, [`${code}.NETOIL`]),
    exact('UNBOOKED', 'Change of net standard volume that is left unbooked', rest, `${code}.ΔNSV − ${code}.BOOKED`, [`${code}.ΔNSV`, `${code}.BOOKED`]),
  ]
  const { mass: _gauged, ...result } = leg.result
  const drawn: Leg = { ...leg, result: { ...result, nsv: { value: text(nsv), unit } }, nsv, mass: null, symbols: { nsv: `${code}.BOOKED`, mass: '' }, lines }
  return { ...resultOf('water-draw-off', [drawn], { nsv: 'Booked in all, net standard volume', mass: '' }), unbooked: { value: text(rest), unit } }
}

/** In the product's unit, with no more digits than the book has. */
function netOilDrawn(text: string, unit: VolumeUnit): Outcome<Rounded> {
  return andThen(parseVolume(text, 'netOil'), (volume) => {
    const rounded = discriminate(`volume ${unit}`, volume.value)
    if (volume.unit !== unit) return refused({ code: 'unit-not-accepted', path: 'netOil', value: text, limit: `the volume in ${unit}, in which the product is booked`, clause: CLAUSE })
    if (volume.value.isNegative() && !volume.value.isZero()) return refused({ code: 'out-of-range', path: 'netOil', value: text, limit: `0 ${unit} or more`, clause: CLAUSE })
    if (!rounded.value.equals(volume.value)) return refused({ code: 'out-of-range', path: 'netOil', value: text, limit: `a whole number of steps of ${rounded.rule.split(',')[0] ?? ''} ${unit}`, clause: CLAUSE })
    return accepted(rounded)
  })
}
