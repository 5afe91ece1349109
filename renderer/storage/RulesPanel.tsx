import { useState, type ReactNode } from 'react'
import type { BackupRules } from '../../main/operations/contracts/index.ts'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { TextField } from '../parts/Field.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { words } from '../words/en.ts'
import { COUNTS, countError, RULES_PLACES, rulesForm, rulesIn, type RulesForm } from './rules-form.ts'

interface RulesPanelProps { readonly rules: BackupRules | null; readonly onClose: () => void; readonly onSet: () => void }

/** Where backups go, how often, and which are kept. */
export function RulesPanel({ rules, onClose, onSet }: RulesPanelProps): ReactNode {
  const t = words.storage.rulesForm
  const [form, setForm] = useState(() => rulesForm(rules))
  const [state, run] = useAction('set-backup-rules')
  const wanted = rulesIn(form)
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], RULES_PLACES)
  const field = (name: keyof RulesForm): ReactNode => (
    <TextField
      key={name} id={`rules-${name}`} label={t[name]} value={form[name]} measured={name !== 'folder'} onChange={(value) => setForm((before) => ({ ...before, [name]: value }))}
      error={(name === 'folder' ? undefined : countError(form[name])) ?? placed.errors.get(`rules-${name}`)}
    />
  )
  const submit = async (): Promise<void> => {
    if (wanted !== undefined && await run(wanted) !== undefined) onSet()
  }
  return (
    <SheetPanel
      title={t.title} open onClose={onClose} width={600} does="set-backup-rules" state={state} submit={t.submit} onSubmit={() => void submit()} ready={wanted !== undefined} busy={state.state === 'running'}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<p>{t.says}</p>}
    >
      {field('folder')}
      <div className="sheet-row">{COUNTS.map(field)}</div>
    </SheetPanel>
  )
}
