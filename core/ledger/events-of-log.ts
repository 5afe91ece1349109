import type { GaugeLog, LoggedLine } from '../gauge/index.ts'
import type { GaugeEvent } from './instruments.ts'

type State = NonNullable<LoggedLine['status']>

/** How a state is entered and left, as events. */
const EVENTS = { alarm: ['alarm', 'alarm-cleared'], fault: ['fault', 'fault-cleared'] } as const

/**
 * The alarms and faults that a gauge log tells of: an event where the status of a gauge changes, none while it stays. A line
 * without a status says nothing. A gauge that begins with an alarm or a fault raised it there; one that begins in order clears nothing.
 * @param log as read from its file, in order of time for each tank
 * @source HOUSE gauge log
 */
export function eventsOfLog(log: GaugeLog): readonly GaugeEvent[] {
  const states = new Map<string, State>()
  const events: GaugeEvent[] = []
  for (const line of log.lines) {
    if (line.status === undefined) continue
    const gauge = `${line.tank}\n${line.gauge ?? ''}`
    const before = states.get(gauge) ?? 'ok'
    states.set(gauge, line.status)
    if (line.status === before) continue
    if (before !== 'ok') events.push(eventOf(line, EVENTS[before][1], log.file))
    if (line.status !== 'ok') events.push(eventOf(line, EVENTS[line.status][0], log.file))
  }
  return events
}

function eventOf({ tank, gauge, at, line, message }: LoggedLine, event: GaugeEvent['event'], file: string): GaugeEvent {
  const place = `${file}, line ${line}`
  return { tank, ...(gauge === undefined ? {} : { gauge }), at, event, message: (message === undefined ? place : `${message} (${place})`).slice(0, 300), source: 'log' }
}
