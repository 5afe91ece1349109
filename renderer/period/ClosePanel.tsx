import { useState, type ReactNode } from 'react'
import { useTerminal } from '../app/TerminalContext.tsx'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useLeave } from '../bridge/desk.ts'
import { useAction } from '../bridge/use-operation.ts'
import { EnteredByField } from '../parts/EnteredByField.tsx'
import { PassphraseField, SelectField } from '../parts/Field.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { useEnteredBy } from '../parts/use-entered-by.ts'
import { Waiting } from '../parts/Waiting.tsx'
import { words } from '../words/en.ts'

interface ClosePanelProps { readonly name: string; readonly signOffs: { check: string; reason: string }[]; readonly onClose: () => void; readonly onClosed: () => void }

const t = words.period.closing
const PLACES = { identity: { id: 'closing-identity', label: t.identity }, passphrase: { id: 'closing-passphrase', label: t.passphrase }, by: { id: 'closing-by', label: t.by } }

/** The last step: who signs, with which passphrase. Where two people are needed it is prepared, and the other one signs. */
export function ClosePanel({ name, signOffs, onClose, onClosed }: ClosePanelProps): ReactNode {
  const { now } = useTerminal()
  const { prepares } = useLeave('close-period')
  const [identity, setIdentity] = useState('')
  const [passphrase, setPassphrase] = useState('')
  const [by, setBy] = useEnteredBy()
  const [state, run, cancel] = useAction('close-period')
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], PLACES)
  const submit = async (): Promise<void> => {
    if (await run({ period: name, signOffs, by, ...(!prepares && { identity, passphrase }) })) onClosed()
  }
  return (
    <SheetPanel title={t.title(name)} open onClose={() => { cancel(); onClose() }} does="close-period" state={state} submit={t.submit} onSubmit={() => void submit()} busy={state.state === 'running'}
      ready={by.trim() !== '' && (prepares || (identity !== '' && passphrase !== ''))} others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined}
      says={<><p>{t.says}</p><p>{t.signedOff(signOffs.length)}{prepares && ` ${t.prepares}`}</p></>}>
      {!prepares && <SelectField id={PLACES.identity.id} label={t.identity} value={identity} placeholder={t.choose} onChange={setIdentity} choices={now.identities.filter(({ hasKey }) => hasKey).map(({ id, name: who, party }) => ({ value: id, label: `${who}, ${party}` }))} error={placed.errors.get(PLACES.identity.id)} />}
      {!prepares && <PassphraseField id={PLACES.passphrase.id} label={t.passphrase} value={passphrase} onChange={setPassphrase} error={placed.errors.get(PLACES.passphrase.id)} />}
      <EnteredByField id={PLACES.by.id} label={t.by} value={by} onChange={setBy} error={placed.errors.get(PLACES.by.id)} />
      {state.state === 'running' && <Waiting step={state.step} />}
    </SheetPanel>
  )
}
