import { parseInstant, type Instant } from '../../core/gauge/index.ts'
import { instantKey } from '../../core/ledger/index.ts'
import { accepted, refused, andThen, type Outcome } from '../../core/refusal/index.ts'

/** An instant that has come already. */
export function notInFuture(at: string, now: string, path: string): Outcome<Instant> {
  return andThen(parseInstant(at, path), (instant) => {
    if (instant.order <= instantKey(now)) return accepted(instant)
    return refused({ code: 'time-in-future', path, value: at, limit: now, clause: 'HOUSE times' })
  })
}
