import { words } from '../words/en.ts'
import type { TransferForm } from './transfer-form.ts'

/** What a transfer is called in lists: `Receipt T-101, CPT-R-17`. */
export function transferTitle(form: Pick<TransferForm, 'kind' | 'tank' | 'reference'>): string {
  const kind = words.transfer.kinds[form.kind]
  const where = form.tank === '' ? words.transfer.start.untitled : form.tank
  return form.reference.trim() === '' ? `${kind} ${where}` : `${kind} ${where}, ${form.reference.trim()}`
}
