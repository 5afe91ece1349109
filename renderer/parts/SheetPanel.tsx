import { useEffect, useRef, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import { useTerminalTimes } from '../app/terminal-hold.ts'
import type { OperationName } from '../../main/operations/contracts/index.ts'
import type { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useLeave } from '../bridge/desk.ts'
import type { CallState } from '../bridge/use-operation.ts'
import { words } from '../words/en.ts'
import { Button } from './Button.tsx'
import { enterMovesOn } from './Field.tsx'
import { CallFailed, Findings } from './Findings.tsx'
import { Panel } from './Panel.tsx'
import './sheet-panel.css'

interface SheetPanelProps {
  readonly title: string
  readonly open: boolean
  readonly onClose: () => void
  readonly width?: number
  /** What the one action is called. */
  readonly submit: string
  readonly onSubmit: () => void
  /** The operation that the sheet is for: who may not do it, or only prepare it, sees so. */
  readonly does?: OperationName
  /** Where its call stands, for an operation that may be prepared. */
  readonly state?: CallState<unknown>
  /** False as long as something is still missing. */
  readonly ready?: boolean
  readonly busy: boolean
  /** Findings that belong to no field. */
  readonly others?: readonly { readonly path: string; readonly message: string }[]
  /** A fault, which belongs to no field either. */
  readonly fault?: FaultInMain | RefusedByMain | undefined
  /** What the person should know before doing it. */
  readonly says?: ReactNode
  readonly children: ReactNode
}

/** A sheet with fields and one action, laid over the page. Enter goes from field to field, Ctrl+Enter does it, Esc leaves. */
export function SheetPanel(props: SheetPanelProps): ReactNode {
  return (
    <Panel title={props.title} open={props.open} onClose={props.onClose} width={props.width ?? 480}>
      {props.open && (props.state?.state === 'prepared' ? <Prepared posts={props.state.posts} onClose={props.onClose} /> : <Sheet {...props} />)}
    </Panel>
  )
}

/** What was prepared and waits for somebody else. */
export function Prepared({ posts, onClose }: { readonly posts: readonly string[]; readonly onClose: () => void }): ReactNode {
  const t = words.desk
  const timed = useTerminalTimes()
  const button = useRef<HTMLDivElement>(null)
  useEffect(() => button.current?.querySelector('button')?.focus(), [])
  return (
    <div className="sheet-panel">
      <p role="status">{t.prepared}</p>
      <p className="sheet-says">{t.posts}</p>
      <ul className="prepared">{posts.map((line) => <li key={line}>{timed(line)}</li>)}</ul>
      <div className="sheet-actions" ref={button}><Button primary onClick={onClose}>{t.done}</Button></div>
    </div>
  )
}

function Sheet({ title, submit: does, onSubmit, onClose, does: operation, ready = true, busy, others = [], fault, says, children }: SheetPanelProps): ReactNode {
  const leave = useLeave(operation)
  const submit = leave.prepares ? words.desk.prepare : does
  const may = ready && !busy && leave.may
  const form = useRef<HTMLFormElement>(null)
  // the panel gives the focus to what is marked so; without it the close button would have it
  useEffect(() => form.current?.querySelector('input:enabled:not([type=file]), select:enabled, textarea:enabled')?.setAttribute('data-autofocus', 'true'), [])
  useKey('ctrl+enter', submit, () => { if (may) onSubmit() }, { group: title })
  return (
    <form ref={form} className="sheet-panel" onSubmit={(event) => { event.preventDefault(); if (may) onSubmit() }} onKeyDown={enterMovesOn}>
      {says && <div className="sheet-says">{says}</div>}
      {children}
      {others.length > 0 && <div role="alert"><Findings findings={others} /></div>}
      {fault && <CallFailed error={fault} />}
      <div className="sheet-actions">
        <Button onClick={onClose}>{words.parts.cancel}</Button>
        <Button primary disabled={!may} title={leave.why} keys="Ctrl+Enter" onClick={onSubmit}>{busy ? words.parts.working : submit}</Button>
      </div>
    </form>
  )
}
