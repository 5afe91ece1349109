import { GAUGE_EVENTS } from '../../core/ledger/index.ts'
import type { InputOf } from '../../main/operations/contracts/index.ts'
import { readLocalTime } from '../parts/local-time.ts'

/** An event of a gauge as it is typed. */
export interface EventForm { readonly tank: string; readonly gauge: string; readonly time: string; readonly event: string; readonly message: string }

export const NO_EVENT: EventForm = { tank: '', gauge: '', time: '', event: 'alarm', message: '' }

/** The event as `record-gauge-event` takes it; undefined as long as something is missing. */
export function readEventForm({ tank, gauge, time, event, message }: EventForm, zone: string): InputOf<'record-gauge-event'>['event'] | undefined {
  const at = readLocalTime(time, zone)
  const kind = GAUGE_EVENTS.find((known) => known === event)
  if (tank === '' || message.trim() === '' || kind === undefined || !at.ok) return undefined
  return { tank, at: at.instant, event: kind, message: message.trim(), ...(gauge.trim() === '' ? {} : { gauge: gauge.trim() }) }
}
