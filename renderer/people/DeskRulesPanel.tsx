import { useState, type ReactNode } from 'react'
import type { InputOf, OutputOf } from '../../main/operations/contracts/index.ts'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { SelectField, TextField } from '../parts/Field.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { words } from '../words/en.ts'

type Rules = OutputOf<'list-people'>['rules']
type Approval = InputOf<'set-desk-rules'>['rules']['approval']

const t = words.desk.rules
const PLACES = { 'rules.idleMinutes': { id: 'rules-idle', label: t.idle }, people: { id: 'rules-approval', label: t.approval } }

/** Whether one may approve what one prepared, and when a desk locks. */
export function DeskRulesPanel({ rules, onClose, onSet }: { readonly rules: Rules; readonly onClose: () => void; readonly onSet: () => void }): ReactNode {
  const [approval, setApproval] = useState<Approval>(rules.approval)
  const [idle, setIdle] = useState(String(rules.idleMinutes))
  const [state, run] = useAction('set-desk-rules')
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], PLACES)
  const minutes = /^\d{1,3}$/.test(idle) ? Number(idle) : 0
  const readable = minutes >= 1 && minutes <= 480
  const submit = async (): Promise<void> => {
    if (await run({ rules: { approval, idleMinutes: minutes } })) onSet()
  }
  return (
    <SheetPanel title={t.title} open onClose={onClose} does="set-desk-rules" submit={t.submit} onSubmit={() => void submit()} busy={state.state === 'running'} ready={readable}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<p>{t.says}</p>}>
      <SelectField id="rules-approval" label={t.approval} value={approval} onChange={(value) => setApproval(value === 'two-people' ? value : 'one-person')} choices={[{ value: 'one-person', label: t.onePerson }, { value: 'two-people', label: t.twoPeople }]} error={placed.errors.get('rules-approval')} />
      <TextField id="rules-idle" label={t.idle} measured value={idle} onChange={setIdle} error={readable || idle === '' ? placed.errors.get('rules-idle') : t.minutes} />
    </SheetPanel>
  )
}
