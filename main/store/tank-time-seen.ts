import { parseInstant } from '../../core/gauge/index.ts'
import { instantKey, refuseTaken, tankTimesOf, type Entry, type MovementInTime, type TankTime } from '../../core/ledger/index.ts'
import { wording } from '../../core/refusal/index.ts'

/** Which tank time the entries so far have taken. */
export interface TankTimeSeen {
  /** Takes the next entry: what of its tank time was taken before it, in sentences. */
  take(entry: Entry): Promise<readonly string[]>
}

/**
 * Nothing taken yet. Most entries begin after all that was gauged of their tank before, so that nothing need be looked up.
 * @param movements what was between gauges of a tank in some time, voided since or not
 */
export function tankTimeSeen(movements: (time: TankTime) => Promise<readonly MovementInTime[]>): TankTimeSeen {
  const latest = new Map<string, string>()

  async function taken(time: TankTime, seq: number): Promise<readonly string[]> {
    if (!parseInstant(time.opened, '').ok || !parseInstant(time.closed, '').ok) return []
    const [opened, closed, last = ''] = [instantKey(time.opened), instantKey(time.closed), latest.get(time.tank)]
    if (closed > last) latest.set(time.tank, closed)
    return last <= opened ? [] : refuseTaken(time, await movements(time), time.tank, seq).map(wording)
  }

  return { take: async (entry) => (await Promise.all(tankTimesOf(entry).map((time) => taken(time, entry.seq)))).flat() }
}
