import { refuseUnverified, standingOf, type StandingVerification } from '../../core/gauge/index.ts'
import { accepted, refused, type Outcome } from '../../core/refusal/index.ts'
import type { LedgerStore } from '../store/index.ts'
import type { ParsedInput } from './context.ts'

/** Every verification of an automatic gauge on record, as later gauges are judged by it. */
export async function verifications(store: Pick<LedgerStore, 'entriesOfKind'>): Promise<readonly StandingVerification[]> {
  return (await store.entriesOfKind('gauge-verified')).map(({ seq, body: { verification, result } }) => standingOf(seq, verification, result))
}

/** Neither gauge of a ticket may stand on an automatic gauge that is not verified for custody. */
export async function verifiedGauges({ opening, closing }: ParsedInput<'post-ticket'>['ticket'], store: LedgerStore): Promise<Outcome<null>> {
  if (opening.instrument === undefined && closing.instrument === undefined) return accepted(null)
  const all = await verifications(store)
  const findings = [...refuseUnverified(opening, all, 'ticket.opening'), ...refuseUnverified(closing, all, 'ticket.closing')]
  return findings.length > 0 ? refused(...findings) : accepted(null)
}
