import { useState, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { useAction, type CallState } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { words } from '../words/en.ts'

interface Check { readonly state: CallState<OutputOf<'verify-ledger'>>; readonly cancelled: boolean; readonly start: () => void; readonly cancel: () => void }

/** A check of the whole ledger, started, watched and cancelled by the person. */
export function useLedgerCheck(): Check {
  const [state, run, cancel] = useAction('verify-ledger')
  const [cancelled, setCancelled] = useState(false)
  const start = (): void => { setCancelled(false); void run({}) }
  useKey('ctrl+enter', words.ledger.verify, start, { group: words.ledger.title, when: state.state !== 'running' })
  return { state, cancelled, start, cancel: () => { setCancelled(true); cancel() } }
}

/** How far the check is, and what came out, in words. */
export function LedgerCheck({ check: { state, cancelled, cancel } }: { readonly check: Check }): ReactNode {
  const t = words.ledger
  if (state.state === 'failed') return <CallFailed error={state.error} />
  if (state.state === 'done') return <Result result={state.value} />
  if (state.state === 'idle' || state.state === 'prepared') return cancelled ? <p role="status" className="quiet">{t.cancelled}</p> : null
  const { step } = state
  return (
    <div className="ledger-running" role="status">
      <progress aria-label={t.verify} {...(step ? { value: step.done, max: step.of } : {})} />
      <span>{step ? t.progress(step.what, step.done, step.of) : t.starting}</span>
      <Button onClick={cancel}>{t.cancel}</Button>
    </div>
  )
}

function Result({ result }: { readonly result: OutputOf<'verify-ledger'> }): ReactNode {
  const t = words.ledger
  if (result.whole) return <p role="status" className="ledger-verdict ledger-whole">{t.whole(result.entries, result.tickets)}</p>
  return (
    <div role="alert">
      <p className="ledger-verdict ledger-damaged">{t.damaged(result.differences.length)}</p>
      <table className="dense" aria-label={t.differences}>
        <thead><tr><th scope="col">{t.where}</th><th scope="col">{t.what}</th></tr></thead>
        <tbody>{result.differences.map((difference) => <tr key={difference.where + difference.what}><td>{difference.where}</td><td className="wrap">{difference.what}</td></tr>)}</tbody>
      </table>
    </div>
  )
}
