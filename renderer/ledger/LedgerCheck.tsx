import { useState, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { useAction, type CallState } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { words } from '../words/en.ts'

interface Check { readonly state: CallState<OutputOf<'verify-ledger'>>; readonly cancelled: boolean; readonly start: (documents: boolean) => void; readonly cancel: () => void }

/** A check of the whole ledger, started, watched and cancelled by the person. */
export function useLedgerCheck(): Check {
  const [state, run, cancel] = useAction('verify-ledger')
  const [cancelled, setCancelled] = useState(false)
  const start = (documents: boolean): void => { setCancelled(false); void run({ documents }) }
  useKey('ctrl+enter', words.ledger.verify, () => start(false), { group: words.ledger.title, when: state.state !== 'running' })
  return { state, cancelled, start, cancel: () => { setCancelled(true); cancel() } }
}

/** How far the check is, and what came out, in words. */
export function LedgerCheck({ check: { state, cancelled, start, cancel } }: { readonly check: Check }): ReactNode {
  const t = words.ledger
  if (state.state === 'failed') return <CallFailed error={state.error} />
  if (state.state === 'done') return <Result result={state.value} onDocuments={() => start(true)} />
  if (state.state === 'idle' || state.state === 'prepared') return cancelled ? <p role="status" className="quiet">{t.cancelled}</p> : null
  const { step } = state
  return (
    <div className="ledger-running" role="status">
      <progress aria-label={t.verify} {...(step && step.of > 0 ? { value: step.done, max: step.of } : {})} />
      <span>{step ? t.checking(step.what, step.done, step.of) : t.starting}</span>
      <Button onClick={cancel}>{t.cancel}</Button>
    </div>
  )
}

function Result({ result, onDocuments }: { readonly result: OutputOf<'verify-ledger'>; readonly onDocuments: () => void }): ReactNode {
  const t = words.ledger
  const [first, ...others] = result.differences
  if (first === undefined) {
    return (
      <div role="status" className="ledger-verdict ledger-whole">
        <p>{t.whole(result.entries, result.tickets, result.recomputed)}</p>
        {result.documents > 0 ? <p>{t.documentsWhole(result.documents)}</p> : result.tickets > 0 && <p><Button onClick={onDocuments}>{t.openDocuments(result.tickets)}</Button></p>}
        {result.noticed.length > 0 && <details><summary>{t.noticed(result.noticed.length)}</summary><ul className="ledger-noticed">{result.noticed.map(({ where, what }) => <li key={where}>{where}: {what}</li>)}</ul></details>}
      </div>
    )
  }
  return (
    <div role="alert" className="ledger-verdict ledger-damaged">
      <p>{t.damaged(result.differences.length)}</p>
      <p className="ledger-first"><strong>{first.where}</strong> {first.what}</p>
      {others.length > 0 && (
        <details>
          <summary>{t.others(others.length)}</summary>
          <table className="dense" aria-label={t.differences}>
            <thead><tr><th scope="col">{t.where}</th><th scope="col">{t.what}</th></tr></thead>
            <tbody>{others.map((difference) => <tr key={difference.where + difference.what}><td>{difference.where}</td><td className="wrap">{difference.what}</td></tr>)}</tbody>
          </table>
        </details>
      )}
    </div>
  )
}
