import { useState, type ReactNode } from 'react'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useQuery } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { words } from '../words/en.ts'
import { EventPanel } from './EventPanel.tsx'
import { NO_EVENT, type EventForm } from './event-form.ts'

/** Alarms and faults of gauges that nobody has cleared, and where events are entered. */
export function GaugeAlarms(): ReactNode {
  const t = words.ledger.alarms
  const { now, again } = useTerminal()
  const zone = useZone()
  const [state] = useQuery('gauge-alarms', {}, now.head.hash)
  const [entering, setEntering] = useState<EventForm | null>(null)
  const alarms = state.state === 'done' ? state.value.alarms : []
  return (
    <aside className="alarms" aria-label={t.title}>
      <header>
        <h2>{t.title}</h2>
        {state.state === 'done' && alarms.length === 0 && <span className="quiet">{t.none}</span>}
        <Button does="record-gauge-event" onClick={() => setEntering(NO_EVENT)}>{t.enter}</Button>
      </header>
      {state.state === 'failed' && <CallFailed error={state.error} />}
      {alarms.length > 0 && (
        <ul>
          {alarms.map((alarm) => (
            <li key={alarm.seq}>
              <span className="alarm-what">{t.standing(words.ledger.events[alarm.kind], alarm.gauge ?? t.noGauge, alarm.tank)}</span>
              <span>{alarm.message}</span>
              <span className="quiet">{t.since(localTime(alarm.at, zone))}</span>
              <Button does="record-gauge-event" onClick={() => setEntering({ tank: alarm.tank, gauge: alarm.gauge ?? '', time: '', event: `${alarm.kind}-cleared`, message: '' })}>{t.clear}</Button>
            </li>
          ))}
        </ul>
      )}
      {entering && <EventPanel begin={entering} onClose={() => setEntering(null)} onRecorded={() => { setEntering(null); again() }} />}
    </aside>
  )
}
