import { instantKey, type PeriodStanding } from '../../core/ledger/index.ts'
import { accepted, andThen, refused, type Outcome } from '../../core/refusal/index.ts'
import type { LedgerStore } from '../store/index.ts'

/** A period by its name. */
export async function periodNamed(store: Pick<LedgerStore, 'periods'>, name: string): Promise<Outcome<PeriodStanding>> {
  const periods = await store.periods()
  const found = periods.find((period) => period.name === name)
  if (found !== undefined) return accepted(found)
  return refused({ code: 'unknown-period', path: 'period', value: name, limit: periods.length === 0 ? 'none yet; open the first with open-period' : periods.map((period) => period.name).join(', '), clause: 'HOUSE periods' })
}

/** A period that may be closed now: it is open, and it has ended. */
export async function periodToClose(store: Pick<LedgerStore, 'periods'>, name: string, now: string): Promise<Outcome<PeriodStanding>> {
  return andThen(await periodNamed(store, name), (period) => {
    if (period.closedBy !== null) return refused({ code: 'period-closed', path: 'period', value: name, limit: `Entry ${period.closedBy} closed it for good; correct it late, in an open period`, clause: 'HOUSE periods' })
    if (instantKey(now) < instantKey(period.to)) return refused({ code: 'time-in-future', path: 'period', value: period.to, limit: now, clause: 'HOUSE periods' })
    return accepted(period)
  })
}
