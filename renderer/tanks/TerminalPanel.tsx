import { useState, type ReactNode } from 'react'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { EnteredByField } from '../parts/EnteredByField.tsx'
import { TextField } from '../parts/Field.tsx'
import { readLocalTime } from '../parts/local-time.ts'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { useEnteredBy } from '../parts/use-entered-by.ts'
import { words } from '../words/en.ts'

interface TerminalPanelProps { readonly open: boolean; readonly onClose: () => void; readonly onEntered: () => void }

/** The terminal's name, its clock and the hour that closes its day. */
export function TerminalPanel(props: TerminalPanelProps): ReactNode {
  return props.open ? <TerminalSheet {...props} /> : null
}

function TerminalSheet({ open, onClose, onEntered }: TerminalPanelProps): ReactNode {
  const t = words.yard.terminalForm
  const { now } = useTerminal()
  const [form, setForm] = useState(now.terminal ?? { code: '', name: '', zone: '', gaugeHour: '06:00' })
  const [by, setBy] = useEnteredBy()
  const [from, setFrom] = useState('')
  const clock = useZone()
  const read = readLocalTime(from, clock)
  const dated = from.trim() === '' || read.ok
  const [state, run] = useAction('set-terminal')
  const place = (field: keyof typeof form) => ({ id: `terminal-${field}`, label: t[field] })
  const placed = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], {
    'terminal.code': place('code'), 'terminal.name': place('name'), 'terminal.zone': place('zone'), 'terminal.gaugeHour': place('gaugeHour'),
    effectiveFrom: { id: 'terminal-from', label: t.from }, by: { id: 'terminal-by', label: words.yard.tankForm.by },
  })
  const submit = async (): Promise<void> => {
    if (await run({ terminal: form, ...(from.trim() !== '' && read.ok && { effectiveFrom: read.instant }), by })) onEntered()
  }
  const field = (name: keyof typeof form, hint = ''): ReactNode => (
    <TextField id={`terminal-${name}`} label={t[name]} value={form[name]} placeholder={hint} onChange={(value) => setForm({ ...form, [name]: value })} error={placed.errors.get(`terminal-${name}`)} />
  )
  return (
    <SheetPanel
      title={t.title} open={open} onClose={onClose} does="set-terminal" submit={words.yard.tankForm.submit} onSubmit={() => void submit()} busy={state.state === 'running'} ready={by.trim() !== '' && dated}
      others={placed.others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined} says={<p>{t.says}</p>}
    >
      <div className="sheet-row">{field('code', 'CPT')}{field('name')}</div>
      <div className="sheet-row">{field('zone', t.zoneHint)}{field('gaugeHour', '06:00')}</div>
      <TextField id="terminal-from" label={`${t.from}, ${clock}`} value={from} placeholder={words.yard.timeHint} onChange={setFrom} error={placed.errors.get('terminal-from') ?? (from.length >= 16 && !read.ok ? words.yard.time[read.why] : undefined)} />
      <EnteredByField id="terminal-by" label={words.yard.tankForm.by} value={by} onChange={setBy} error={placed.errors.get('terminal-by')} />
    </SheetPanel>
  )
}
