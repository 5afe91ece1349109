import { parseInstant } from '../../core/gauge/index.ts'
import {
  closedPeriodOf, instantKey, periodHolding, refuseInventoryOutside, refuseOutsidePeriods, refuseSetInClosed, type Late, type PeriodStanding, type Span, type SpanPaths,
} from '../../core/ledger/index.ts'
import { accepted, refused, type Finding, type Outcome } from '../../core/refusal/index.ts'
import type { LedgerStore } from '../store/index.ts'
import { notInFuture } from './times.ts'

/** A late correction as it is asked for: what is left out is filled in. */
export interface LateWish { readonly period?: string | undefined; readonly bookedAt?: string | undefined; readonly corrects?: number | undefined }

interface Books { readonly store: Pick<LedgerStore, 'periods' | 'movementsOf'>; readonly now: () => string }

/**
 * How something between two gauges may be booked: as it is in an open period, or as a late correction where it concerns a
 * closed one and was asked for as such. Instants that cannot be read are refused elsewhere.
 */
export async function bookable(span: Span, wish: LateWish | undefined, { store, now }: Books, paths: SpanPaths): Promise<Outcome<Late | undefined>> {
  if (!parseInstant(span.opened, '').ok || !parseInstant(span.closed, '').ok) return accepted(undefined)
  const periods = await store.periods()
  const late = wish && filledIn(wish, span, periods, now())
  const findings = [...refuseOutsidePeriods(span, late, periods, paths), ...late === undefined ? [] : await lateFindings(late, store, now(), paths.late ?? 'late')]
  return findings.length > 0 ? refused(...findings) : accepted(late)
}

/** Whether a measured inventory may be entered. */
export async function measurable(at: string, store: Pick<LedgerStore, 'periods'>, path: string): Promise<Outcome<null>> {
  if (!parseInstant(at, '').ok) return accepted(null)
  const findings = refuseInventoryOutside(at, await store.periods(), path)
  return findings.length > 0 ? refused(...findings) : accepted(null)
}

/** Whether a tank, product or limit may take effect. */
export async function settable(effectiveFrom: string, store: Pick<LedgerStore, 'periods'>, path: string): Promise<Outcome<null>> {
  if (!parseInstant(effectiveFrom, '').ok) return accepted(null)
  const findings = refuseSetInClosed(effectiveFrom, await store.periods(), path)
  return findings.length > 0 ? refused(...findings) : accepted(null)
}

function filledIn({ period, bookedAt, corrects }: LateWish, span: Span, periods: readonly PeriodStanding[], now: string): Late {
  return {
    period: period ?? closedPeriodOf(span, periods)?.name ?? 'no closed period', bookedAt: bookedAt ?? usualBooking(periods, now),
    ...corrects === undefined ? {} : { corrects },
  }
}

/** Now, as long as an open period holds it; else the end of the last one that ended. */
export function usualBooking(periods: readonly PeriodStanding[], now: string): string {
  if (periodHolding(now, periods)?.closedBy === null) return now
  return periods.findLast(({ to, closedBy }) => closedBy === null && instantKey(to) <= instantKey(now))?.to ?? now
}

async function lateFindings({ bookedAt, corrects }: Late, store: Books['store'], now: string, path: string): Promise<readonly Finding[]> {
  const time = notInFuture(bookedAt, now, `${path}.bookedAt`)
  const future = time.ok ? [] : time.findings.filter(({ code }) => code === 'time-in-future')
  if (corrects === undefined || (await store.movementsOf(corrects)).length > 0) return future
  return [...future, { code: 'out-of-range', path: `${path}.corrects`, value: String(corrects), limit: 'the number of an entry that changed the book, as a ticket or an adjustment', clause: 'HOUSE periods' }]
}
