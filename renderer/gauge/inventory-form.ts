import { z } from 'zod'
import { EMPTY_GAUGE, gaugeFormSchema, withLine, withoutLine, withValue, type GaugeField, type ListName } from './gauge-form.ts'
import { begun, edited, redone, undone, type History } from './history.ts'

/** A measured inventory as it is being written; what a draft keeps. */
export const inventoryFormSchema = z.strictObject({ tank: z.string().max(40), product: z.string().max(40), enteredBy: z.string().max(80), gauge: gaugeFormSchema })
export type InventoryForm = Readonly<z.infer<typeof inventoryFormSchema>>

export function newInventory(tank: string, product: string): InventoryForm {
  return { tank, product, enteredBy: '', gauge: EMPTY_GAUGE }
}

export type InventoryAction =
  | { readonly do: 'choose-tank'; readonly tank: string; readonly product: string }
  | { readonly do: 'entered-by'; readonly value: string }
  | { readonly do: 'write'; readonly field: GaugeField; readonly value: string }
  | { readonly do: 'put-gauge'; readonly form: InventoryForm['gauge'] }
  | { readonly do: 'add-line'; readonly list: ListName }
  | { readonly do: 'drop-line'; readonly list: ListName; readonly at: number }
  | { readonly do: 'undo' }
  | { readonly do: 'redo' }

export function openInventory(form: InventoryForm): History<InventoryForm> {
  return begun(form)
}

/** The inventory after an action. */
export function inventoryReducer(history: History<InventoryForm>, action: InventoryAction): History<InventoryForm> {
  const form = history.present
  switch (action.do) {
    case 'undo': return undone(history)
    case 'redo': return redone(history)
    case 'choose-tank': return edited(history, { ...form, tank: action.tank, product: action.product }, null)
    case 'entered-by': return edited(history, { ...form, enteredBy: action.value }, 'enteredBy')
    case 'write': return edited(history, { ...form, gauge: withValue(form.gauge, action.field, action.value) }, action.field)
    case 'put-gauge': return edited(history, { ...form, gauge: action.form }, null)
    case 'add-line': return edited(history, { ...form, gauge: withLine(form.gauge, action.list) }, null)
    case 'drop-line': return edited(history, { ...form, gauge: withoutLine(form.gauge, action.list, action.at) }, null)
  }
}
