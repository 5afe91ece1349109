import { z } from 'zod'
import { TRANSFER_KINDS, type TransferKind } from '../../core/transfer/index.ts'
import { EMPTY_GAUGE, gaugeFormSchema, withLine, withoutLine, withValue, type GaugeField, type ListName } from '../gauge/gauge-form.ts'
import { begun, edited, redone, undone, type History } from '../gauge/history.ts'

const text = z.string().max(500)
const lineContents = z.strictObject({ volume: text, temperature: text })

/** A transfer as it is being written; what a draft keeps. */
export const transferFormSchema = z.strictObject({
  kind: z.enum(TRANSFER_KINDS), tank: text, product: text, from: text, to: text, reference: text, remarks: text, replaces: text,
  opening: gaugeFormSchema, closing: gaugeFormSchema,
  /** The line by its code, where its change is booked on its own account. */
  lineFill: z.strictObject({ used: z.boolean(), line: text.default(''), opening: lineContents, closing: lineContents }),
})
export type TransferForm = Readonly<z.infer<typeof transferFormSchema>>

export const GAUGES = ['opening', 'closing'] as const
export type GaugeName = (typeof GAUGES)[number]
export type HeaderField = 'from' | 'to' | 'reference' | 'remarks' | 'product'
export type LineFillField = 'volume' | 'temperature'

/** A new transfer: nothing but what was chosen. No value is ever invented. */
export function newTransfer(chosen: { readonly kind: TransferKind; readonly tank: string; readonly product: string }): TransferForm {
  const empty = { volume: '', temperature: '' }
  return { ...chosen, from: '', to: '', reference: '', remarks: '', replaces: '', opening: EMPTY_GAUGE, closing: EMPTY_GAUGE, lineFill: { used: false, line: '', opening: empty, closing: empty } }
}

export type TransferAction =
  | { readonly do: 'choose-kind'; readonly kind: TransferKind }
  | { readonly do: 'choose-tank'; readonly tank: string; readonly product: string }
  | { readonly do: 'write'; readonly field: HeaderField; readonly value: string }
  | { readonly do: 'write-gauge'; readonly gauge: GaugeName; readonly field: GaugeField; readonly value: string }
  | { readonly do: 'put-gauge'; readonly gauge: GaugeName; readonly form: TransferForm['opening'] }
  | { readonly do: 'add-line'; readonly gauge: GaugeName; readonly list: ListName }
  | { readonly do: 'drop-line'; readonly gauge: GaugeName; readonly list: ListName; readonly at: number }
  | { readonly do: 'use-line-fill'; readonly used: boolean }
  | { readonly do: 'name-line'; readonly value: string }
  | { readonly do: 'write-line-fill'; readonly gauge: GaugeName; readonly field: LineFillField; readonly value: string }
  | { readonly do: 'undo' }
  | { readonly do: 'redo' }

export function openTransfer(form: TransferForm): History<TransferForm> {
  return begun(form)
}

/** The transfer after an action. */
export function transferReducer(history: History<TransferForm>, action: TransferAction): History<TransferForm> {
  const form = history.present
  switch (action.do) {
    case 'undo': return undone(history)
    case 'redo': return redone(history)
    case 'choose-kind': return edited(history, { ...form, kind: action.kind }, 'kind')
    case 'choose-tank': return edited(history, { ...form, tank: action.tank, product: action.product }, null)
    case 'write': return edited(history, { ...form, [action.field]: action.value }, action.field)
    case 'write-gauge': return edited(history, { ...form, [action.gauge]: withValue(form[action.gauge], action.field, action.value) }, `${action.gauge}.${action.field}`)
    case 'put-gauge': return edited(history, { ...form, [action.gauge]: action.form }, null)
    case 'add-line': return edited(history, { ...form, [action.gauge]: withLine(form[action.gauge], action.list) }, null)
    case 'drop-line': return edited(history, { ...form, [action.gauge]: withoutLine(form[action.gauge], action.list, action.at) }, null)
    case 'use-line-fill': return edited(history, { ...form, lineFill: { ...form.lineFill, used: action.used } }, null)
    case 'name-line': return edited(history, { ...form, lineFill: { ...form.lineFill, line: action.value } }, 'lineFill.line')
    case 'write-line-fill': {
      const contents = { ...form.lineFill[action.gauge], [action.field]: action.value }
      return edited(history, { ...form, lineFill: { ...form.lineFill, [action.gauge]: contents } }, `lineFill.${action.gauge}.${action.field}`)
    }
  }
}
