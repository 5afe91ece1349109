import { z } from 'zod'
import { STOCK_MOVEMENTS, type StockMovementKind } from '../../core/transfer/index.ts'
import { EMPTY_GAUGE, gaugeFormSchema, withLine, withoutLine, withValue, type GaugeField, type GaugeForm, type ListName } from '../gauge/gauge-form.ts'
import { begun, edited, redone, undone, type History } from '../gauge/history.ts'

const text = z.string().max(500)
const contents = z.strictObject({ at: text, net: text, volume: text, temperature: text, density: text, sedimentAndWater: text })

/** A movement inside the terminal as it is being written; what a draft keeps. The last tank is the one that takes. */
export const stockFormSchema = z.strictObject({
  kind: z.enum(STOCK_MOVEMENTS),
  tanks: z.array(z.strictObject({ tank: text, product: text, opening: gaugeFormSchema, closing: gaugeFormSchema })).max(11),
  /** The new name of a regrade, and its density where it is stated at its own base conditions. */
  toProduct: text, toDensity: text,
  netOil: text,
  line: z.strictObject({ used: z.boolean(), by: z.enum(['net', 'observed']), code: text, product: text, opening: contents, closing: contents }),
  reason: text, reference: text, enteredBy: text,
})
export type StockForm = Readonly<z.infer<typeof stockFormSchema>>
export type StockTank = StockForm['tanks'][number]
export type LineForm = StockForm['line']
export type LineField = keyof LineForm['opening']
export type GaugeSide = 'opening' | 'closing'
export type StockField = 'toProduct' | 'toDensity' | 'netOil' | 'reason' | 'reference' | 'enteredBy'

const NO_TANK: StockTank = { tank: '', product: '', opening: EMPTY_GAUGE, closing: EMPTY_GAUGE }
const NO_CONTENTS: LineForm['opening'] = { at: '', net: '', volume: '', temperature: '', density: '', sedimentAndWater: '' }
const MOST_TANKS = 11

/** How many tanks each kind begins with. */
const TANKS: { readonly [K in StockMovementKind]: number } = { 'tank-to-tank': 2, blend: 3, regrade: 1, 'water-draw-off': 1, 'line-fill': 0 }

/** A new movement: nothing but what was chosen. */
export function newStock(kind: StockMovementKind, first?: { readonly tank: string; readonly product: string }): StockForm {
  const form: StockForm = {
    kind, tanks: [], toProduct: '', toDensity: '', netOil: '', reason: '', reference: '', enteredBy: '',
    line: { used: kind === 'line-fill', by: 'net', code: '', product: '', opening: NO_CONTENTS, closing: NO_CONTENTS },
  }
  return withTanks({ ...form, tanks: first === undefined ? [] : [{ ...NO_TANK, ...first }] }, kind)
}

function withTanks(form: StockForm, kind: StockMovementKind): StockForm {
  const tanks = Array.from({ length: TANKS[kind] }, (_, i) => form.tanks[i] ?? NO_TANK)
  return { ...form, kind, tanks, line: { ...form.line, used: kind === 'line-fill' || (form.line.used && hasLine(kind)) } }
}

/** Whether a line may stand beside the tanks. */
export function hasLine(kind: StockMovementKind): boolean {
  return kind === 'tank-to-tank' || kind === 'blend'
}

/** Which gauges of a tank a kind has. */
export function sidesOf(kind: StockMovementKind): readonly GaugeSide[] {
  return kind === 'regrade' ? ['opening'] : ['opening', 'closing']
}

export type StockAction =
  | { readonly do: 'choose-kind'; readonly kind: StockMovementKind }
  | { readonly do: 'choose-tank'; readonly at: number; readonly tank: string; readonly product: string }
  | { readonly do: 'write'; readonly field: StockField; readonly value: string }
  | { readonly do: 'write-gauge'; readonly at: number; readonly side: GaugeSide; readonly field: GaugeField; readonly value: string }
  | { readonly do: 'add-line'; readonly at: number; readonly side: GaugeSide; readonly list: ListName }
  | { readonly do: 'drop-line'; readonly at: number; readonly side: GaugeSide; readonly list: ListName; readonly place: number }
  | { readonly do: 'add-tank' }
  | { readonly do: 'drop-tank'; readonly at: number }
  | { readonly do: 'use-line'; readonly used: boolean }
  | { readonly do: 'set-line'; readonly field: 'code' | 'product' | 'by'; readonly value: string }
  | { readonly do: 'write-line'; readonly side: GaugeSide; readonly field: LineField; readonly value: string }
  | { readonly do: 'undo' }
  | { readonly do: 'redo' }

export function openStock(form: StockForm): History<StockForm> {
  return begun(form)
}

/** The movement after an action. */
export function stockReducer(history: History<StockForm>, action: StockAction): History<StockForm> {
  const form = history.present
  const step = (parts: Partial<StockForm>, field: string | null = null): History<StockForm> => edited(history, { ...form, ...parts }, field)
  const gauge = (at: number, side: GaugeSide, change: (gauge: GaugeForm) => GaugeForm, field: string | null): History<StockForm> =>
    step({ tanks: form.tanks.map((tank, i) => (i === at ? { ...tank, [side]: change(tank[side]) } : tank)) }, field)
  switch (action.do) {
    case 'undo': return undone(history)
    case 'redo': return redone(history)
    case 'choose-kind': return edited(history, withTanks(form, action.kind), null)
    case 'choose-tank': return step({ tanks: form.tanks.map((tank, i) => (i === action.at ? { ...tank, tank: action.tank, product: action.product } : tank)) })
    case 'write': return step({ [action.field]: action.value }, action.field)
    case 'write-gauge': return gauge(action.at, action.side, (one) => withValue(one, action.field, action.value), `${action.at}.${action.side}.${action.field}`)
    case 'add-line': return gauge(action.at, action.side, (one) => withLine(one, action.list), null)
    case 'drop-line': return gauge(action.at, action.side, (one) => withoutLine(one, action.list, action.place), null)
    case 'add-tank': return form.tanks.length >= MOST_TANKS ? history : step({ tanks: [...form.tanks.slice(0, -1), NO_TANK, ...form.tanks.slice(-1)] })
    case 'drop-tank': return form.tanks.length <= 2 ? history : step({ tanks: form.tanks.filter((_, i) => i !== action.at) })
    case 'use-line': return step({ line: { ...form.line, used: action.used } })
    case 'set-line': return step({ line: { ...form.line, [action.field]: action.value } }, `line.${action.field}`)
    case 'write-line': return step({ line: { ...form.line, [action.side]: { ...form.line[action.side], [action.field]: action.value } } }, `line.${action.side}.${action.field}`)
  }
}
