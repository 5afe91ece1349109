import { useEffect, useRef, type ReactNode } from 'react'
import { useKey } from '../app/keys.tsx'
import type { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
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
      {props.open && <Sheet {...props} />}
    </Panel>
  )
}

function Sheet({ title, submit, onSubmit, onClose, ready = true, busy, others = [], fault, says, children }: SheetPanelProps): ReactNode {
  const may = ready && !busy
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
        <Button primary disabled={!may} keys="Ctrl+Enter" onClick={onSubmit}>{busy ? words.parts.working : submit}</Button>
      </div>
    </form>
  )
}
