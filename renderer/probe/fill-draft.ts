import { addressOf, goTo } from '../app/route.ts'
import type { Bridge } from '../bridge/bridge.ts'
import { newInventory } from '../gauge/inventory-form.ts'
import type { GaugeForm } from '../gauge/gauge-form.ts'
import { beginTransfer } from '../transfer/begin-draft.ts'
import { newTransfer, transferFormSchema, type GaugeName } from '../transfer/transfer-form.ts'
import { transferTitle } from '../transfer/transfer-title.ts'
import { words } from '../words/en.ts'
import type { FilledFor } from './filled-for.ts'
import { keptProbe, probeDraft } from './probe-draft.ts'
import type { ProbeForm } from './probe-form.ts'

export type FilledGauges = { readonly [G in GaugeName]?: GaugeForm }

/** Puts gauges into a kept transfer and opens it; false when the transfer is no longer there. */
export async function fillTransfer(bridge: Bridge, id: string, gauges: FilledGauges): Promise<boolean> {
  const { drafts } = await bridge.call('list-drafts', {})
  const form = transferFormSchema.safeParse(drafts.find((draft) => draft.id === id)?.body)
  if (!form.success) return false
  const filled = { ...form.data, ...gauges }
  await bridge.call('save-draft', { id, kind: 'transfer', title: transferTitle(filled), body: filled })
  goTo(addressOf('transfer', [id]))
  return true
}

/** Begins a transfer with gauges filled in, and opens it. */
export function beginFilled(bridge: Bridge, begun: { readonly kind: 'receipt' | 'delivery'; readonly tank: string; readonly product: string }, gauges: FilledGauges): Promise<void> {
  return beginTransfer(bridge, { ...newTransfer(begun), ...gauges })
}

/** Begins an inventory with its gauge filled in, and opens it. */
export async function beginFilledInventory(bridge: Bridge, tank: string, product: string, gauge: GaugeForm): Promise<void> {
  const id = crypto.randomUUID()
  await bridge.call('save-draft', { id, kind: 'inventory', title: words.gauge.inventoryTitle(tank), body: { ...newInventory(tank, product), gauge } })
  goTo(addressOf('gauge', [id]))
}

/** Changes the probe's sheet that is kept for a tank, or a new one, and opens it. @param isFor the gauge that it goes on to */
export async function fillProbe(bridge: Bridge, tank: string, fill: (kept: ProbeForm) => ProbeForm, isFor: FilledFor | undefined): Promise<void> {
  const { drafts } = await bridge.call('list-drafts', {})
  await bridge.call('save-draft', { id: probeDraft(tank), kind: 'probe', title: words.probe.draftTitle(tank), body: fill(keptProbe(drafts, tank)) })
  goTo(addressOf('gauge', ['probe'], { tank, ...isFor }))
}
