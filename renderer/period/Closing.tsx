import { useCallback, useEffect, useState, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useAgainWhenBack } from '../bridge/reach.ts'
import { useAction } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { Waiting } from '../parts/Waiting.tsx'
import { words } from '../words/en.ts'
import { CheckList } from './CheckList.tsx'
import { ClosePanel } from './ClosePanel.tsx'
import { signOffsOf, standingOfChecks, type Reasons } from './sign-offs.ts'

interface ClosingProps { readonly name: string; readonly to: string; readonly onClosed: () => void }

/** The checks of an open period, a reason for each that does not hold, and the way to close it. */
export function Closing({ name, to, onClosed }: ClosingProps): ReactNode {
  const t = words.period
  const zone = useZone()
  const { now: { head } } = useTerminal()
  const [state, look, cancel] = useAction('closing-checks')
  const [reasons, setReasons] = useState<Reasons>({})
  const [closing, setClosing] = useState(false)
  const lookAgain = useCallback(() => void look({ period: name }), [look, name])
  useEffect(lookAgain, [lookAgain, head.hash])
  useAgainWhenBack(state.state === 'failed' ? state.error : null, state.state === 'done', lookAgain)
  const checks = state.state === 'done' ? state.value.checks : undefined
  const { failing, signed, never } = standingOfChecks(checks ?? [], reasons)
  const ended = state.state !== 'done' || state.value.ended
  const ready = checks !== undefined && ended && signed === failing && !never
  useKey('c', t.closing.button, () => setClosing(true), { group: t.title, when: ready && !closing, does: 'close-period' })
  return (
    <section aria-label={t.checks.title}>
      <div className="period-row">
        <h3>{t.checks.title}</h3>
        <Button disabled={state.state === 'running'} onClick={lookAgain}>{state.state === 'running' ? t.checks.looking : t.checks.run}</Button>
        <Button primary does="close-period" keys="C" disabled={!ready} onClick={() => setClosing(true)}>{t.closing.button}</Button>
      </div>
      {!ended && <p className="quiet">{t.checks.ended(localTime(to, zone))}</p>}
      {state.state === 'running' && <Waiting step={state.step} say={words.ledger.checking} onCancel={cancel} />}
      {state.state === 'failed' && <CallFailed error={state.error} onAgain={lookAgain} />}
      {checks && <p role="status">{failing === 0 ? t.checks.allHold : ended ? t.checks.failing(failing, signed) : t.checks.notYet(failing)}</p>}
      {checks && <CheckList checks={checks} reasons={reasons} onReason={ended ? (check, reason) => setReasons((before) => ({ ...before, [check]: reason })) : undefined} />}
      {closing && checks && <ClosePanel name={name} signOffs={signOffsOf(checks, reasons)} onClose={() => setClosing(false)} onClosed={() => { setClosing(false); onClosed() }} />}
    </section>
  )
}
