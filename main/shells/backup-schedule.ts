import { backupNow, backupState, retireBackups } from '../operations/handlers/backup.ts'
import type { Context, LedgerContext } from '../operations/context.ts'

/** How often it is asked whether a backup is due [ms]. */
const TICK = 60_000
/** After a failure the next attempt waits this long [ms]. */
const PAUSE = 15 * 60_000

/** What was done when it was asked. */
export type Done = 'made' | 'failed' | 'not due'

/**
 * One look at the clock: makes a backup when one is due, and then retires what the rule does not keep. A failure is
 * written to the log and stands in the state of backups; it is tried again after a pause.
 */
export function scheduleOf(context: Context): (signal: AbortSignal) => Promise<Done> {
  let lastFailure = -Infinity
  return async (signal) => {
    const { store, place } = context
    const now = Date.parse(context.now())
    // a clock that was set back is no reason to wait
    if (store === null || place === null || place.backups.running() || (now >= lastFailure && now - lastFailure < PAUSE)) return 'not due'
    try {
      return await backUp({ ...context, store }, signal)
    } catch (error) {
      if (signal.aborted) return 'not due'
      lastFailure = now
      context.log(`${context.now()} the backup that was due failed: ${error instanceof Error ? error.message : String(error)}`)
      return 'failed'
    }
  }
}

async function backUp(context: LedgerContext, signal: AbortSignal): Promise<Done> {
  const call = { progress: () => undefined, signal }
  const { due } = await backupState({}, context, call)
  if (due === null || Date.parse(due) > Date.parse(context.now())) return 'not due'
  const { name, entries } = await backupNow({}, context, call)
  context.log(`${context.now()} backup ${name} was made and verified: ${entries} entries`)
  await retireBackups({ delete: true }, context, call)
  return 'made'
}

/** Keeps the schedule until it is stopped; stopping breaks off a backup that is being made. */
export function keepSchedule(context: Context): () => Promise<void> {
  const abort = new AbortController()
  const look = scheduleOf(context)
  let looking: Promise<unknown> = Promise.resolve()
  const timer = setInterval(() => { looking = looking.then(() => look(abort.signal)) }, TICK)
  timer.unref()
  return async () => {
    clearInterval(timer)
    abort.abort()
    await looking
  }
}
