import type { ReactNode } from 'react'
import { useAction } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { Panel } from '../parts/Panel.tsx'
import { words } from '../words/en.ts'
import { Running } from './Running.tsx'

interface BackupPanelProps { readonly name: string; readonly onClose: () => void; readonly onVerified: () => void; readonly onRestore: () => void }

/** One backup: verified again, or restored from. */
export function BackupPanel({ name, onClose, onVerified, onRestore }: BackupPanelProps): ReactNode {
  const t = words.storage.backup
  const [state, run, cancel] = useAction('verify-backup')
  const verify = async (): Promise<void> => {
    if (await run({ backup: name }) !== undefined) onVerified()
  }
  const first = state.state === 'done' ? state.value.differences[0] : undefined
  return (
    <Panel title={t.title(name)} open onClose={onClose} width={600}>
      <p className="quiet">{t.says}</p>
      {state.state === 'running' && <Running label={t.verify} step={state.step} onCancel={cancel} />}
      {state.state === 'failed' && <CallFailed error={state.error} />}
      {state.state === 'done' && state.value.whole && <p role="status" className="storage-done">{t.whole(state.value.entries)}</p>}
      {first !== undefined && <p role="alert" className="storage-damaged">{t.damaged(first.where, first.what)}</p>}
      <p className="storage-close">
        <Button onClick={onClose}>{t.close}</Button> <Button does="verify-backup" disabled={state.state === 'running'} onClick={() => void verify()}>{t.verify}</Button> <Button primary does="restore-backup" disabled={first !== undefined} onClick={onRestore}>{t.restore}</Button>
      </p>
    </Panel>
  )
}
