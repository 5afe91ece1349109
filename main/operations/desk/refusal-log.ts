import { apart } from './idle.ts'
import { logEvent, type AtDesk } from './events.ts'
import type { LoggedRefusal } from './desk.ts'
import type { People } from './people.ts'

const MINUTE = 60_000

/** A refusal of permission: who, what, and why. `person` is empty when nobody was at the desk. */
export type Refusal = Pick<LoggedRefusal, 'person' | 'operation' | 'why'>

/**
 * Logs a refusal. The same person refused the same operation again within a minute is only counted; how often stands in one
 * entry once the minute is over, so that a loop cannot flood the chain.
 */
export async function logRefusal(at: AtDesk, people: Pick<People, 'person'>, refusal: Refusal): Promise<void> {
  const { desk, now } = at
  const key = JSON.stringify([refusal.person, refusal.operation, refusal.why])
  const before = desk.refusals.get(key)
  if (before !== undefined) {
    desk.refusals.set(key, { ...before, more: before.more + 1 })
    return
  }
  desk.refusals.set(key, { ...refusal, at: now(), more: 0 })
  await log(at, people, refusal, refusal.why)
}

/** Writes down how often what was refused was refused again, where the minute is over. */
export async function logCounted(at: AtDesk, people: Pick<People, 'person'>): Promise<void> {
  const { desk, now } = at
  for (const [key, refusal] of desk.refusals) {
    if (apart(refusal.at, now()) < MINUTE) continue
    desk.refusals.delete(key)
    if (refusal.more > 0) await log(at, people, refusal, `${refusal.why}; ${refusal.more} more times within a minute of ${refusal.at}`)
  }
}

async function log(at: AtDesk, people: Pick<People, 'person'>, { person, operation }: Refusal, detail: string): Promise<void> {
  await logEvent(at, people, { event: 'permission-refused', person, operation, detail })
}
