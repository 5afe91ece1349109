import { useState, type ReactNode } from 'react'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { useTerminal } from '../app/TerminalContext.tsx'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { PassphraseField, SelectField } from '../parts/Field.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { words } from '../words/en.ts'
import { signOffsIn } from './sign-offs-in.ts'

interface ApprovePanelProps { readonly proposal: OutputOf<'list-proposals'>['proposals'][number]; readonly onClose: () => void; readonly onApproved: () => void }

const t = words.period.closing
const PLACES = { identity: { id: 'approve-identity', label: t.identity }, passphrase: { id: 'approve-passphrase', label: t.passphrase } }

/** What is booked with a signature is approved by whoever signs it. */
export function ApprovePanel({ proposal, onClose, onApproved }: ApprovePanelProps): ReactNode {
  const { now } = useTerminal()
  const [identity, setIdentity] = useState('')
  const [passphrase, setPassphrase] = useState('')
  const [state, run] = useAction('approve-proposal')
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], PLACES)
  const given = signOffsIn(proposal.input)
  const submit = async (): Promise<void> => {
    if (await run({ id: proposal.id, identity, passphrase })) onApproved()
  }
  return (
    <SheetPanel title={proposal.posts[0] ?? proposal.says} open onClose={onClose} submit={t.submit} onSubmit={() => void submit()} busy={state.state === 'running'} ready={identity !== '' && passphrase !== ''}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<><p>{t.says}</p>{given.length > 0 && <div className="approve-given"><p>{t.signOffsGiven}:</p><ul>{given.map(({ check, reason }) => <li key={check}>{check}: <strong>{reason}</strong></li>)}</ul></div>}</>}>
      <SelectField id={PLACES.identity.id} label={t.identity} value={identity} placeholder={t.choose} onChange={setIdentity} choices={now.identities.filter(({ hasKey }) => hasKey).map(({ id, name, party }) => ({ value: id, label: `${name}, ${party}` }))} error={placed.errors.get(PLACES.identity.id)} />
      <PassphraseField id={PLACES.passphrase.id} label={t.passphrase} value={passphrase} onChange={setPassphrase} error={placed.errors.get(PLACES.passphrase.id)} />
    </SheetPanel>
  )
}
