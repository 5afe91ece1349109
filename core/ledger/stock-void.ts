import type { Finding } from '../refusal/index.ts'
import { instantKey } from './instant.ts'

/** How a stock movement stands: by which entry it was voided, or not. */
export interface StockStanding { readonly seq: number; readonly voided: { readonly seq: number; readonly reason: string } | null }

const CLAUSE = 'HOUSE void-and-replace'

/**
 * Why a stock movement may not be voided; empty when it may.
 * Refuses `unknown-entry`, `movement-already-voided`, `reason-missing`.
 * @param standing how it stands; undefined when the entry is no stock movement
 * @param request the number of the entry that was given, and the reason
 * @source HOUSE void-and-replace
 */
export function refuseStockVoid(standing: StockStanding | undefined, { seq, reason }: { readonly seq: number; readonly reason: string }): readonly Finding[] {
  const findings: Finding[] = []
  if (standing === undefined) findings.push({ code: 'unknown-entry', path: 'seq', value: String(seq), limit: 'give the number of a stock movement; list-stock-movements has those there are', clause: CLAUSE })
  else if (standing.voided !== null) {
    findings.push({ code: 'movement-already-voided', path: 'seq', value: String(seq), limit: `by entry ${standing.voided.seq}: ${standing.voided.reason}`, clause: CLAUSE })
  }
  if (reason.trim() === '') findings.push({ code: 'reason-missing', path: 'reason', value: reason, limit: 'say in a sentence why the movement is void', clause: CLAUSE })
  return findings
}

/**
 * The leg that counts first: where it counts in a closed period, the movement is taken back late as a whole.
 * @param legs of one movement, in any order
 * @source HOUSE periods
 */
export function bookedFirst<L extends { readonly bookedAt: string }>(legs: readonly L[]): L | undefined {
  return legs.toSorted((a, b) => (instantKey(a.bookedAt) < instantKey(b.bookedAt) ? -1 : 1))[0]
}
