import { instantKey } from './instant.ts'
import type { GaugeEvent } from './instruments.ts'

/** Which event ends which. */
const ENDS = { 'alarm-cleared': 'alarm', 'fault-cleared': 'fault' } as const

/**
 * Alarms and faults of gauges that nobody has cleared by an instant: of each gauge the last of a kind that was not
 * followed by its clearing.
 * @param events in any order
 * @param at UTC instant; later events are left out
 * @source HOUSE periods
 */
export function openAlarms(events: readonly GaugeEvent[], at: string): readonly GaugeEvent[] {
  const open = new Map<string, GaugeEvent>()
  const inTime = events.filter((event) => instantKey(event.at) <= instantKey(at)).toSorted((a, b) => (instantKey(a.at) < instantKey(b.at) ? -1 : 1))
  for (const event of inTime) {
    const place = `${event.tank}\n${event.gauge ?? ''}\n`
    if (event.event === 'alarm' || event.event === 'fault') open.set(place + event.event, event)
    else if (event.event === 'alarm-cleared' || event.event === 'fault-cleared') open.delete(place + ENDS[event.event])
  }
  return [...open.values()]
}
