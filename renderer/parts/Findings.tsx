import type { ReactNode } from 'react'
import { useTerminalTimes } from '../app/terminal-hold.ts'
import { RefusedByMain, type FaultInMain } from '../bridge/bridge.ts'
import { words } from '../words/en.ts'
import './findings.css'

interface Spoken { readonly path: string; readonly message: string; readonly clause?: string }

/** What was refused, a line each; with `onJump` each line leads to the field it belongs to. */
export function Findings({ findings, onJump }: { readonly findings: readonly Spoken[]; readonly onJump?: (path: string) => void }): ReactNode {
  const timed = useTerminalTimes()
  if (findings.length === 0) return null
  return (
    <ul className="findings">
      {findings.map((finding, i) => (
        <li key={`${finding.path}-${i}`}>
          {onJump ? <button type="button" onClick={() => onJump(finding.path)}>{timed(finding.message)}</button> : timed(finding.message)}
        </li>
      ))}
    </ul>
  )
}

/** A call that failed: every finding of a refusal, or the one sentence of a fault. */
export function CallFailed({ error, onAgain }: { readonly error: RefusedByMain | FaultInMain; readonly onAgain?: () => void }): ReactNode {
  return (
    <div role="alert" className="call-failed">
      {error instanceof RefusedByMain
        ? <Findings findings={error.findings} />
        : <p><strong>{words.parts.fault}</strong> {error.message}</p>}
      {onAgain && <button type="button" className="plain-button" onClick={onAgain}>{words.parts.tryAgain}</button>}
    </div>
  )
}
