import { useState, type ReactNode } from 'react'
import type { BackupRules, ListedBackup } from '../../main/operations/contracts/index.ts'
import { useKey } from '../app/keys.tsx'
import type { Route } from '../app/route.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useLeave } from '../bridge/desk.ts'
import { useAction, useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { Page } from '../parts/Page.tsx'
import { words } from '../words/en.ts'
import { BackupPanel } from './BackupPanel.tsx'
import { BackupTable } from './BackupTable.tsx'
import { FactLines } from './FactLines.tsx'
import { JobPanel } from './JobPanel.tsx'
import { RetirePanel } from './RetirePanel.tsx'
import { RulesPanel } from './RulesPanel.tsx'
import { Running } from './Running.tsx'
import { backupFacts, placeFacts } from './storage-facts.ts'
import type { StorageJobName } from './storage-jobs.ts'
import './storage.css'

type Sheet =
  | { readonly kind: 'job'; readonly name: StorageJobName; readonly given: Readonly<Record<string, string>> }
  | { readonly kind: 'rules'; readonly rules: BackupRules | null } | { readonly kind: 'retire'; readonly names: readonly string[] } | { readonly kind: 'backup'; readonly name: string }

/** Where the ledger is kept, its backups, and ledgers made from it. */
export function StoragePage(_: { readonly route: Route }): ReactNode {
  const t = words.storage
  const zone = useZone()
  const { head } = useTerminal().now
  const [storage, askStorage] = useQuery('storage', {}, head.hash)
  const [state, askState] = useQuery('backup-state', {}, head.hash)
  const [made, backUp, cancel] = useAction('backup-now')
  const [cancelled, setCancelled] = useState(false)
  const [listed, setListed] = useState(0)
  const [sheet, setSheet] = useState<Sheet>()
  const again = (): void => { askStorage(); askState(); setListed((n) => n + 1) }
  const close = (): void => { setSheet(undefined); again() }
  const open = (name: StorageJobName, given: Readonly<Record<string, string>> = {}): void => setSheet({ kind: 'job', name, given })
  const rules = state.state === 'done' ? state.value.rules : null
  const start = async (): Promise<void> => { setCancelled(false); await backUp({}); again() }
  const leave = useLeave('backup-now')
  const ready = rules !== null && made.state !== 'running' && leave.may
  useKey('ctrl+enter', t.now, () => void start(), { group: t.title, when: ready && sheet === undefined })
  return (
    <Page title={t.title} actions={
      <>
        <Button does="export-ledger" onClick={() => open('export')}>{t.export}</Button>
        <Button does="import-ledger" onClick={() => open('import')}>{t.import}</Button>
        <Button does="restore-backup" onClick={() => open('restore')}>{t.restore}</Button>
        <Button does="copy-ledger" onClick={() => open('copy')}>{t.copy}</Button>
        <Button does="set-backup-rules" primary={state.state === 'done' && rules === null} disabled={state.state !== 'done'} onClick={() => setSheet({ kind: 'rules', rules })}>{t.rules}</Button>
        <Button does="backup-now" primary={rules !== null} keys="Ctrl+Enter" disabled={!ready} onClick={() => void start()}>{t.now}</Button>
      </>
    }>
      <div className="storage">
        <div className="storage-head">
          {storage.state === 'done' && <FactLines facts={placeFacts(storage.value)} action={<Button does="set-storage" onClick={() => open('place', { ledger: storage.value.setting ?? '' })}>{t.nextStart}</Button>} />}
          {state.state === 'done' && <FactLines facts={backupFacts(state.value, new Date().toISOString(), zone)} />}
        </div>
        {storage.state === 'failed' && <CallFailed error={storage.error} />}
        {state.state === 'failed' && <CallFailed error={state.error} onAgain={askState} />}
        {made.state === 'running' && <Running label={t.now} step={made.step} onCancel={() => { setCancelled(true); cancel() }} />}
        {made.state === 'failed' && <CallFailed error={made.error} />}
        {made.state === 'done' && <p role="status" className="storage-done">{t.made(made.value.name, made.value.entries, made.value.tickets, made.value.seconds)}</p>}
        {made.state === 'idle' && cancelled && <p role="status" className="quiet">{t.cancelled}</p>}
        {!leave.may && <p className="quiet">{t.listOnly(leave.why)}</p>}
        {rules !== null && leave.may && <Listed key={`${rules.folder} ${listed}`} onChoose={({ name }) => setSheet({ kind: 'backup', name })} onRetire={(names) => setSheet({ kind: 'retire', names })} />}
      </div>
      {sheet?.kind === 'job' && <JobPanel name={sheet.name} given={sheet.given} onClose={close} />}
      {sheet?.kind === 'rules' && <RulesPanel rules={sheet.rules} onClose={close} onSet={close} />}
      {sheet?.kind === 'retire' && <RetirePanel names={sheet.names} onClose={close} onRetired={close} />}
      {sheet?.kind === 'backup' && <BackupPanel name={sheet.name} onClose={close} onVerified={again} onRestore={() => open('restore', { backup: sheet.name })} />}
    </Page>
  )
}

/** The backups that stand in the folder; the page gives it a new key when they may have changed. */
function Listed({ onChoose, onRetire }: { readonly onChoose: (backup: ListedBackup) => void; readonly onRetire: (names: readonly string[]) => void }): ReactNode {
  const t = words.storage
  const [list, again] = useQuery('list-backups', {})
  if (list.state === 'failed') return <CallFailed error={list.error} onAgain={again} />
  if (list.state !== 'done') return null
  const retired = list.value.backups.filter(({ fate }) => fate === 'retired').map(({ name }) => name)
  return (
    <>
      <div className="storage-list-head"><h2>{t.list}</h2>{retired.length > 0 && <Button does="retire-backups" onClick={() => onRetire(retired)}>{t.retireMany(retired.length)}</Button>}</div>
      <BackupTable backups={list.value.backups} onChoose={onChoose} />
    </>
  )
}
