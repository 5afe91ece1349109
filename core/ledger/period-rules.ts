import { parseInstant } from '../gauge/index.ts'
import type { Finding } from '../refusal/index.ts'
import { instantKey } from './instant.ts'
import type { Period } from './period.ts'
import type { Late } from './stock.ts'

/** A period that was opened by the entry `seq`, and the entry that closed it; null while it is open. */
export interface PeriodStanding extends Period { readonly seq: number; readonly closedBy: number | null }

/** Between which gauges something happened; both are the same for what has one instant alone. */
export interface Span { readonly opened: string; readonly closed: string }

/** Where the instants of a posting stand in what was handed in. */
export interface SpanPaths {
  readonly opened: string; readonly closed: string
  /** Absent where nothing is ever posted late. */
  readonly late?: string
}

const CLAUSE = 'HOUSE periods'

/**
 * The period that an instant belongs to: after its beginning, up to and with its end.
 * @param periods in order of time, as they follow each other
 * @source HOUSE periods
 */
export function periodHolding(at: string, periods: readonly PeriodStanding[]): PeriodStanding | undefined {
  const moment = instantKey(at)
  return periods.find(({ from, to }) => instantKey(from) < moment && moment <= instantKey(to))
}

/** The last period that was closed: what lies up to its end is closed, since periods are closed one after another. */
export function lastClosed(periods: readonly PeriodStanding[]): PeriodStanding | undefined {
  return periods.findLast(({ closedBy }) => closedBy !== null)
}

/**
 * The closed period that something between two gauges concerns; undefined when it concerns none. A movement that began
 * in a closed period concerns it even where it ended later: the inventory that closed the period was taken as still.
 * @source HOUSE periods
 */
export function closedPeriodOf({ opened, closed }: Span, periods: readonly PeriodStanding[]): PeriodStanding | undefined {
  const last = lastClosed(periods)
  if (last === undefined) return undefined
  const end = instantKey(last.to)
  if (instantKey(closed) > end && instantKey(opened) >= end) return undefined
  return periodHolding(instantKey(closed) > end ? last.to : closed, periods)
}

/**
 * Whether what happened between two gauges may be booked: in an open period as it is, and what concerns a closed one
 * only as a late correction that counts in an open one. Nothing is refused where no period was ever opened.
 * Refuses `period-closed`, `period-not-open`, `value-not-used`, `out-of-range`.
 * @param span instants that can be read
 * @param late how it is marked as a late correction, if it is
 * @param periods in order of time
 * @param paths where the instants stand
 * @source HOUSE periods
 */
export function refuseOutsidePeriods(span: Span, late: Late | undefined, periods: readonly PeriodStanding[], paths: SpanPaths): readonly Finding[] {
  const concerned = closedPeriodOf(span, periods)
  if (late !== undefined) return lateFindings(span, late, concerned, periods, paths)
  if (periods.length === 0) return []
  if (concerned !== undefined) {
    const path = instantKey(span.closed) <= instantKey(concerned.to) ? paths.closed : paths.opened
    const value = path === paths.closed ? span.closed : span.opened
    return [{ code: 'period-closed', path, value, limit: `${inWords(concerned)} is closed; ${paths.late === undefined ? 'let it count at an instant in an open period' : `post it as a late correction with ${paths.late}: {"period": "${concerned.name}"}, and it counts in an open period`}`, clause: CLAUSE }]
  }
  return notOpen(span.closed, periods, paths.closed)
}

function lateFindings(span: Span, late: Late, concerned: PeriodStanding | undefined, periods: readonly PeriodStanding[], { late: path = 'late' }: SpanPaths): readonly Finding[] {
  if (concerned === undefined) {
    return [{ code: 'value-not-used', path: path, value: late.period, limit: `${span.closed} concerns no closed period; leave ${path} away`, clause: CLAUSE }]
  }
  const booked = parseInstant(late.bookedAt, `${path}.bookedAt`)
  return [
    ...(late.period === concerned.name ? [] : [{ code: 'out-of-range', path: `${path}.period`, value: late.period, limit: `${inWords(concerned)}, which it concerns`, clause: CLAUSE } satisfies Finding]),
    ...(booked.ok ? notOpen(late.bookedAt, periods, `${path}.bookedAt`) : booked.findings),
  ]
}

/** That an instant lies in no open period. */
function notOpen(at: string, periods: readonly PeriodStanding[], path: string): readonly Finding[] {
  if (periodHolding(at, periods)?.closedBy === null) return []
  const open = periods.filter(({ closedBy }) => closedBy === null)
  const last = periods.at(-1)
  const standing = open.length === 0 ? 'no period is open' : `open ${open.length === 1 ? 'is' : 'are'} ${open.map(inWords).join(', ')}`
  const next = last === undefined ? '' : `; the next begins at ${last.to}, open it with open-period`
  return [{ code: 'period-not-open', path, value: at, limit: `${standing}${next}`, clause: CLAUSE }]
}

/**
 * Whether a measured inventory may be entered: in an open period, or not after the beginning of the first, which it
 * opens. A closed period takes none, not even late: its seal rests on those that were there.
 * Refuses `period-closed`, `period-not-open`.
 * @param at instant that can be read
 * @source HOUSE periods
 */
export function refuseInventoryOutside(at: string, periods: readonly PeriodStanding[], path: string): readonly Finding[] {
  const [first] = periods
  if (first === undefined || instantKey(at) <= instantKey(first.from)) return []
  const holding = periodHolding(at, periods)
  if (holding === undefined || holding.closedBy === null) return notOpen(at, periods, path)
  return [{ code: 'period-closed', path, value: at, limit: `${inWords(holding)} is closed and its seal rests on the inventories it had; post what it shows as an adjustment, late, with this gauge in its reason`, clause: CLAUSE }]
}

/**
 * Whether a tank, product or limit may take effect at an instant: after everything that is closed, which stands as it was
 * computed and judged by the versions of its time. The end of a period belongs to it.
 * Refuses `period-closed`.
 * @param effectiveFrom instant that can be read
 * @param periods in order of time
 * @source HOUSE periods
 */
export function refuseSetInClosed(effectiveFrom: string, periods: readonly PeriodStanding[], path: string): readonly Finding[] {
  const last = lastClosed(periods)
  if (last === undefined || instantKey(effectiveFrom) > instantKey(last.to)) return []
  return [{ code: 'period-closed', path, value: effectiveFrom, limit: `${inWords(last)} is closed and stands as it was computed; let it take effect after ${last.to}, and adjust what came out wrong before`, clause: CLAUSE }]
}

/**
 * Whether a period may be opened: the first begins anywhere, each next where the one before ends.
 * Refuses `unreadable-value`, `period-backwards`, `already-on-record`, `period-gap`.
 * @param period as it would be opened
 * @param periods in order of time
 * @source HOUSE periods
 */
export function refuseOpening(period: Period, periods: readonly PeriodStanding[]): readonly Finding[] {
  const [from, to] = [parseInstant(period.from, 'from'), parseInstant(period.to, 'to')]
  const taken = periods.find(({ name }) => name === period.name)
  const last = periods.at(-1)
  return [
    ...(from.ok ? [] : from.findings), ...(to.ok ? [] : to.findings),
    ...(from.ok && to.ok && from.value.order >= to.value.order ? [{ code: 'period-backwards', path: 'to', value: period.to, limit: period.from, clause: CLAUSE } satisfies Finding] : []),
    ...(taken === undefined ? [] : [{ code: 'already-on-record', path: 'name', value: period.name, limit: `it runs from ${taken.from} to ${taken.to}; choose another name`, clause: CLAUSE } satisfies Finding]),
    ...(from.ok && last !== undefined && from.value.order !== instantKey(last.to)
      ? [{ code: 'period-gap', path: 'from', value: period.from, limit: `${last.name} ends at ${last.to}, and the next begins there`, clause: CLAUSE } satisfies Finding] : []),
  ]
}

function inWords({ name, from, to }: Period): string {
  return `${name} (${from} to ${to})`
}
