import { useEffect, useState, type ReactNode } from 'react'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { addressOf } from '../app/route.ts'
import { useTerminalTimes } from '../app/terminal-hold.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useDesk } from '../bridge/desk.ts'
import { useAction, useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { DenseTable } from '../parts/DenseTable.tsx'
import { LongTextField } from '../parts/Field.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { words } from '../words/en.ts'
import { ApprovePanel } from './ApprovePanel.tsx'
import './desk.css'

type Proposal = OutputOf<'list-proposals'>['proposals'][number]

/** What waits for approval; nothing at all where nothing waits. */
export function WaitingList(): ReactNode {
  return useDesk()?.now.session ? <Standing /> : null
}

function Standing(): ReactNode {
  const { now, again: terminalAgain } = useTerminal()
  const [state, again] = useQuery('list-proposals', {})
  // the head moves with every proposal, whoever made it
  useEffect(again, [again, now.head.seq])
  const [approved, approve] = useAction('approve-proposal')
  const [withdrawn, withdraw] = useAction('withdraw-proposal')
  const [rejecting, setRejecting] = useState<Proposal>()
  const [signing, setSigning] = useState<Proposal>()
  const [reopen, setReopen] = useState<string>()
  const [said, setSaid] = useState<string>()
  const t = words.desk.waiting
  const timed = useTerminalTimes()
  const tell = ({ posts, says }: Proposal, how: (what: string) => string): void => setSaid(how(posts.join('; ') || says))
  const done = (): void => { setRejecting(undefined); setSigning(undefined); again(); terminalAgain() }
  if (state.state === 'failed') return <CallFailed error={state.error} onAgain={again} />
  if (state.state !== 'done' || (state.value.proposals.length === 0 && reopen === undefined && said === undefined)) return null
  const failed = [approved, withdrawn].find((one) => one.state === 'failed')
  return (
    <section className="approvals">
      <h2>{t.title}</h2>
      {reopen !== undefined && <p role="status">{t.draftBack} <a href={addressOf('stock', [reopen])}>{t.openDraft}</a></p>}
      {said !== undefined && <p role="status">{timed(said)}</p>}
      {failed?.state === 'failed' && <CallFailed error={failed.error} />}
      {state.value.proposals.length === 0 ? <p className="quiet">{t.none}</p> : (
        <WaitingTable
          proposals={state.value.proposals} busy={approved.state === 'running'} onReject={setRejecting}
          onApprove={(proposal) => { if (proposal.operation === 'close-period') setSigning(proposal); else void approve({ id: proposal.id }).then((did) => { if (did) tell(proposal, t.approved); done() }) }} onWithdraw={(proposal) => void withdraw({ id: proposal.id }).then((did) => { if (did) setReopen(draftOf(proposal)); done() })}
        />
      )}
      {signing && <ApprovePanel proposal={signing} onClose={() => setSigning(undefined)} onApproved={() => { tell(signing, t.approved); done() }} />}
      {rejecting && <RejectPanel proposal={rejecting} onClose={() => setRejecting(undefined)} onRejected={() => { tell(rejecting, t.rejected); done() }} />}
    </section>
  )
}

/** The draft that a movement was prepared from: it stands again when the movement is taken back. */
function draftOf({ input }: Proposal): string | undefined {
  const draft = typeof input === 'object' && input !== null && !Array.isArray(input) ? input['draft'] : undefined
  return typeof draft === 'string' ? draft : undefined
}

type Act = (proposal: Proposal) => void
interface WaitingTableProps { readonly proposals: readonly Proposal[]; readonly busy: boolean; readonly onApprove: Act; readonly onReject: Act; readonly onWithdraw: Act }

/** What each would post, who prepared it, and what can be done with it. */
export function WaitingTable({ proposals, busy, onApprove, onReject, onWithdraw }: WaitingTableProps): ReactNode {
  const t = words.desk.waiting
  const zone = useZone()
  const timed = useTerminalTimes()
  const own = useDesk()?.now.session?.person.id
  return (
    <DenseTable<Proposal>
      label={t.title} rows={proposals} rowKey={({ id }) => id} empty={t.none}
      columns={[
        { key: 'what', head: t.what, wrap: true, cell: ({ posts, wrong, note }) => (
          <>{posts.map((line) => <div key={line}>{timed(line)}</div>)}{wrong.map((why) => <div key={why} className="waiting-wrong">{t.wrong(timed(why))}</div>)}{note && <div className="waiting-note">{note}</div>}</>
        ) },
        { key: 'by', head: t.preparedBy, cell: ({ preparedBy }) => preparedBy.name },
        { key: 'at', head: t.at, cell: ({ preparedAt }) => localTime(preparedAt.replace(/\.\d+Z$/, 'Z'), zone) },
        { key: 'act', head: <span className="read-aloud">{t.actions}</span>, align: 'end', cell: (proposal) => (
          <span className="waiting-actions">
            {proposal.preparedBy.id === own
              ? <Button onClick={() => onWithdraw(proposal)}>{t.withdraw}</Button>
              : <Button disabled={proposal.notBy !== ''} title={proposal.notBy} onClick={() => onReject(proposal)}>{t.reject}</Button>}
            <Button disabled={busy || proposal.notBy !== '' || proposal.wrong.length > 0} title={proposal.notBy} onClick={() => onApprove(proposal)}>{t.approve}</Button>
          </span>
        ) },
      ]}
    />
  )
}

const PLACES = { reason: { id: 'reject-reason', label: words.desk.waiting.reason } }

/** Asks why before something is turned down. */
export function RejectPanel({ proposal, onClose, onRejected }: { readonly proposal: Proposal; readonly onClose: () => void; readonly onRejected: () => void }): ReactNode {
  const t = words.desk.waiting
  const [reason, setReason] = useState('')
  const [state, run] = useAction('reject-proposal')
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], PLACES)
  const submit = async (): Promise<void> => {
    if (await run({ id: proposal.id, reason })) onRejected()
  }
  return (
    <SheetPanel title={t.rejectTitle(proposal.says)} open onClose={onClose} submit={t.rejectSubmit} onSubmit={() => void submit()} busy={state.state === 'running'} ready={reason.trim() !== ''}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<p>{t.rejectSays}</p>}>
      <LongTextField id={PLACES.reason.id} label={t.reason} value={reason} rows={3} onChange={setReason} error={placed.errors.get(PLACES.reason.id)} />
    </SheetPanel>
  )
}
