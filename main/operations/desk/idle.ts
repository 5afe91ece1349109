const MINUTE = 60_000

/**
 * Whether a session has been idle for as long as the rules allow. A clock that was set back counts as idle too: nobody
 * keeps a desk open by it.
 */
export function isIdle(activeAt: string, now: string, idleMinutes: number): boolean {
  return apart(activeAt, now) >= idleMinutes * MINUTE
}

/** When a session will be locked if nothing is done. */
export function locksAt(activeAt: string, idleMinutes: number): string {
  return new Date(Date.parse(activeAt) + idleMinutes * MINUTE).toISOString()
}

/** Time between two instants, whichever is first [ms]. */
export function apart(one: string, other: string): number {
  return Math.abs(Date.parse(other) - Date.parse(one))
}
