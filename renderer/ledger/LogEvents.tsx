import { useState, type ReactNode } from 'react'
import type { GaugeLog } from '../../core/gauge/index.ts'
import { eventsOfLog } from '../../core/ledger/index.ts'
import { useTerminal, useZone } from '../app/TerminalContext.tsx'
import { useAction } from '../bridge/use-operation.ts'
import { Button } from '../parts/Button.tsx'
import { EnteredByField } from '../parts/EnteredByField.tsx'
import { CallFailed } from '../parts/Findings.tsx'
import { localTime } from '../parts/local-time.ts'
import { useEnteredBy } from '../parts/use-entered-by.ts'
import { words } from '../words/en.ts'
import './ledger.css'

/** The alarms and faults that a gauge log tells of, of tanks on record; those that are ticked go into the ledger. */
export function LogEvents({ log }: { readonly log: GaugeLog }): ReactNode {
  const t = words.ledger.logEvents
  const { now, again } = useTerminal()
  const zone = useZone()
  const events = eventsOfLog(log).filter(({ tank }) => now.tanks.some(({ code }) => code === tank))
  const [left, setLeft] = useState<ReadonlySet<number>>(new Set())
  const [by, setBy] = useEnteredBy()
  const [state, run] = useAction('record-gauge-events')
  if (events.length === 0) return null
  const picked = events.filter((_, i) => !left.has(i))
  const record = async (): Promise<void> => {
    if (await run({ by, events: picked.map(({ source: _, ...event }) => event) })) again()
  }
  return (
    <details className="log-events">
      <summary>{t.title(events.length)}</summary>
      <ul>
        {events.map((event, i) => (
          <li key={`${event.tank} ${event.gauge ?? ''} ${event.at} ${event.event}`}>
            <label><input type="checkbox" checked={!left.has(i)} onChange={() => setLeft(toggled(left, i))} /> {t.line(localTime(event.at, zone), words.ledger.events[event.event], event.gauge ?? '', event.tank)} <span className="quiet">{event.message}</span></label>
          </li>
        ))}
      </ul>
      <div className="log-events-foot">
        <EnteredByField id="log-events-by" label={t.by} value={by} onChange={setBy} />
        <Button does="record-gauge-events" disabled={picked.length === 0 || by.trim() === '' || state.state === 'running'} onClick={() => void record()}>{t.record(picked.length)}</Button>
      </div>
      {state.state === 'failed' && <CallFailed error={state.error} />}
      {state.state === 'done' && <p role="status">{t.recorded(state.value.recorded, state.value.known)}</p>}
    </details>
  )
}

function toggled(left: ReadonlySet<number>, i: number): ReadonlySet<number> {
  const next = new Set(left)
  if (!next.delete(i)) next.add(i)
  return next
}
