import { addressOf, goTo } from '../app/route.ts'
import type { Bridge } from '../bridge/bridge.ts'
import type { TransferForm } from './transfer-form.ts'
import { transferTitle } from './transfer-title.ts'

/** Keeps a new transfer as a draft and opens it. */
export async function beginTransfer(bridge: Bridge, form: TransferForm, { replace = false }: { readonly replace?: boolean } = {}): Promise<void> {
  const id = crypto.randomUUID()
  await bridge.call('save-draft', { id, kind: 'transfer', title: transferTitle(form), body: form })
  goTo(addressOf('transfer', [id]), { replace })
}
