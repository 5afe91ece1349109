import { useState, type ReactNode } from 'react'
import { GAUGE_EVENTS } from '../../core/ledger/index.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { FaultInMain, RefusedByMain } from '../bridge/bridge.ts'
import { useAction } from '../bridge/use-operation.ts'
import { EnteredByField } from '../parts/EnteredByField.tsx'
import { LongTextField, SelectField, TextField } from '../parts/Field.tsx'
import { placeFindings } from '../parts/place-findings.ts'
import { SheetPanel } from '../parts/SheetPanel.tsx'
import { useEnteredBy } from '../parts/use-entered-by.ts'
import { words } from '../words/en.ts'
import { readEventForm, type EventForm } from './event-form.ts'

const t = words.ledger.event
const PLACES = {
  'event.tank': { id: 'event-tank', label: t.tank }, 'event.gauge': { id: 'event-gauge', label: t.gauge }, 'event.at': { id: 'event-time', label: t.time },
  'event.event': { id: 'event-event', label: t.event }, 'event.message': { id: 'event-message', label: t.message }, by: { id: 'event-by', label: t.by },
}

/** Enters an alarm or another event of a gauge as somebody saw it. */
export function EventPanel({ begin, onClose, onRecorded }: { readonly begin: EventForm; readonly onClose: () => void; readonly onRecorded: () => void }): ReactNode {
  const { now } = useTerminal()
  const zone = useZone()
  const [form, setForm] = useState(begin)
  const [by, setBy] = useEnteredBy()
  const [state, run, cancel] = useAction('record-gauge-event')
  const { errors, others } = placeFindings(state.state === 'failed' && state.error instanceof RefusedByMain ? state.error.findings : [], PLACES)
  const set = (field: keyof EventForm) => (value: string): void => setForm({ ...form, [field]: value })
  const event = readEventForm(form, zone)
  const submit = async (): Promise<void> => {
    if (event !== undefined && await run({ event, by })) onRecorded()
  }
  return (
    <SheetPanel
      title={t.title} open onClose={() => { cancel(); onClose() }} does="record-gauge-event" state={state} submit={t.submit} onSubmit={() => void submit()}
      busy={state.state === 'running'} ready={event !== undefined && by.trim() !== ''} others={others} fault={state.state === 'failed' && state.error instanceof FaultInMain ? state.error : undefined}
    >
      <SelectField id="event-tank" label={t.tank} value={form.tank} placeholder={t.choose} onChange={set('tank')} choices={now.tanks.map(({ code }) => ({ value: code, label: code }))} error={errors.get('event-tank')} />
      <TextField id="event-gauge" label={t.gauge} value={form.gauge} placeholder={t.gaugeHint} onChange={set('gauge')} error={errors.get('event-gauge')} />
      <SelectField id="event-event" label={t.event} value={form.event} onChange={set('event')} choices={GAUGE_EVENTS.map((kind) => ({ value: kind, label: words.ledger.events[kind] }))} error={errors.get('event-event')} />
      <TextField id="event-time" label={t.time} value={form.time} placeholder={t.timeHint} onChange={set('time')} error={errors.get('event-time')} />
      <LongTextField id="event-message" label={t.message} value={form.message} onChange={set('message')} error={errors.get('event-message')} />
      <EnteredByField id="event-by" label={t.by} value={by} onChange={setBy} error={errors.get('event-by')} />
    </SheetPanel>
  )
}
