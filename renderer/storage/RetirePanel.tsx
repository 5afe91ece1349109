import type { ReactNode } from 'react'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { words } from '../words/en.ts'

/** What would be deleted, before it is. */
export function RetirePanel({ names, onClose, onRetired }: { readonly names: readonly string[]; readonly onClose: () => void; readonly onRetired: () => void }): ReactNode {
  const t = words.storage.retire
  const [state, run] = useAction('retire-backups')
  const retire = async (): Promise<void> => {
    if (await run({ delete: true }) !== undefined) onRetired()
  }
  const error = state.state === 'failed' ? state.error : undefined
  return (
    <SheetPanel
      title={t.title} open onClose={onClose} width={600} does="retire-backups" state={state} submit={t.submit} onSubmit={() => void retire()} busy={state.state === 'running'} says={<p>{t.says}</p>}
      others={error instanceof RefusedByMain ? error.findings : []} fault={error instanceof FaultInMain ? error : undefined}
    >
      <ul className="storage-names">{names.map((name) => <li key={name}>{name}</li>)}</ul>
    </SheetPanel>
  )
}
