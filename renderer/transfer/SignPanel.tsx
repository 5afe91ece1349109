import { useState, type ReactNode } from 'react'
import type { InputOf } from '../../main/operations/contracts/index.ts'
import { useKey } from '../app/keys.tsx'
import { useTerminal } from '../app/TerminalContext.tsx'
import { RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { jumpTo } from '../gauge/SheetChecks.tsx'
import { Button } from '../parts/Button.tsx'
import { enterMovesOn } from '../parts/Field.tsx'
import { CallFailed, Findings } from '../parts/Findings.tsx'
import { Panel } from '../parts/Panel.tsx'
import { Waiting } from '../parts/Waiting.tsx'
import { useLate } from '../period/use-late.tsx'
import { words } from '../words/en.ts'
import type { TicketDraft } from './compute-transfer.ts'
import { fieldOfSignedFinding, placeSigned } from './signed-findings.ts'
import { SignerFields, type SignerForm } from './SignerFields.tsx'

interface SignPanelProps {
  readonly open: boolean
  readonly onClose: () => void
  readonly ticket: TicketDraft
  readonly draft: string
  /** While posting runs the draft must not be written again behind it. */
  readonly onHold: (hold: boolean) => void
  readonly onBooked: (number: string) => void
}

/**
 * Two people sign; the ticket is numbered and booked, or nothing happens and the reasons stand beside the fields. Once
 * posting runs the panel stays until it is answered, so that nobody leaves without knowing whether it was booked.
 */
export function SignPanel(props: SignPanelProps): ReactNode {
  const [posting, setPosting] = useState(false)
  const hold = (busy: boolean): void => {
    setPosting(busy)
    props.onHold(busy)
  }
  const close = (): void => {
    if (!posting) props.onClose()
  }
  return (
    <Panel title={words.transfer.signing.title} open={props.open} onClose={close} width={640}>
      {props.open && <SignForm {...props} onClose={close} onHold={hold} />}
    </Panel>
  )
}

/** Stands only while the panel is open, so that no passphrase outlives it. */
function SignForm({ onClose, ticket, draft, onHold, onBooked }: SignPanelProps): ReactNode {
  const t = words.transfer.signing
  const { now } = useTerminal()
  const [state, post] = useAction('post-ticket')
  const [signers, setSigners] = useState<readonly [SignerForm, SignerForm]>([{ identity: '', role: 'terminal', passphrase: '' }, { identity: '', role: 'counterparty', passphrase: '' }])
  const offer = useLate('sign', { opened: ticket.opening.at, closed: ticket.closing.at })
  const ready = offer.ready && signers.every(({ identity, passphrase }) => identity !== '' && passphrase !== '') && state.state !== 'running'
  const findings = state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : []
  const { errors, elsewhere } = placeSigned(findings)
  const book = async (): Promise<void> => {
    if (!ready) return
    onHold(true)
    const input: InputOf<'post-ticket'> = { ticket, signers: [signers[0], signers[1]], draft, ...(offer.late && { late: offer.late }) }
    const posted = await post(input)
    if (posted) onBooked(posted.number)
    else onHold(false)
  }
  useKey('ctrl+enter', t.book, () => void book(), { group: t.title })
  const change = (which: 0 | 1) => (signer: SignerForm) => setSigners(which === 0 ? [signer, signers[1]] : [signers[0], signer])
  return (
    <>
      <p className="quiet">{now.identities.length === 0 ? t.nobody : t.says(now.nextNumber)}</p>
      {offer.note}
      <div className="signing" onKeyDown={enterMovesOn}>
        <SignerFields index={0} title={t.first} value={signers[0]} onChange={change(0)} errors={errors} identities={now.identities} autoFocus />
        <SignerFields index={1} title={t.second} value={signers[1]} onChange={change(1)} errors={errors} identities={now.identities} />
      </div>
      {elsewhere.length > 0 && (
        <div role="alert"><h2>{t.onSheet}</h2>
          <Findings findings={elsewhere} onJump={(path) => { onClose(); setTimeout(() => jumpTo(fieldOfSignedFinding(path))) }} />
        </div>
      )}
      {state.state === 'failed' && !(state.error instanceof RefusedByMain) && <CallFailed error={state.error} />}
      {state.state === 'running' && <Waiting step={state.step} />}
      <div className="panel-actions">
        <Button disabled={state.state === 'running'} onClick={onClose}>{t.close}</Button>
        <Button primary does="post-ticket" disabled={!ready} keys="Ctrl+Enter" onClick={() => void book()}>{t.book}</Button>
      </div>
    </>
  )
}
