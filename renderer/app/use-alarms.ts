import type { OutputOf } from '../../main/operations/contracts/index.ts'
import { useQuery } from '../bridge/use-operation.ts'

export type Alarm = OutputOf<'gauge-alarms'>['alarms'][number]

/** Alarms and faults of gauges that stand, asked again when the ledger's head moves; none as long as nobody has answered. */
export function useAlarms(head: string): readonly Alarm[] {
  const [state] = useQuery('gauge-alarms', {}, head)
  return state.state === 'done' ? state.value.alarms : []
}
