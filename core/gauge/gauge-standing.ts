import type { Finding } from '../refusal/index.ts'
import { Decimal } from '../units/index.ts'
import { parseInstant } from './instant.ts'
import type { GaugeSnapshot } from './snapshot.ts'
import type { GaugeVerification, StandingVerification, VerificationResult } from './verification.ts'

/** What of a verification is needed to judge later gauges. */
export function standingOf(seq: number, { tank, gauge, at, use, rule, nextDue }: GaugeVerification, { verdict, asFound, asLeft }: VerificationResult): StandingVerification {
  const { points } = asLeft ?? asFound
  const worst = points.reduce((most, point) => (new Decimal(point.difference.value).abs().gt(new Decimal(most?.difference.value ?? 0).abs()) ? point : most), points[0])
  if (worst === undefined) throw new Error('a verification has at least one level')
  const said = ({ value, unit }: { readonly value: string; readonly unit: string }): string => `${value} ${unit}`
  return { seq, tank, gauge, at, use, rule, verdict, greatest: said(worst.difference), limit: said(worst.limit), nextDue: nextDue ?? null }
}

/** The verification in force for a gauge at an instant: the last one not after it. */
export function verificationInForce(all: readonly StandingVerification[], tank: string, gauge: string, at: string): StandingVerification | undefined {
  const order = orderOf(at)
  return all.filter((one) => one.tank === tank && one.gauge === gauge && orderOf(one.at) <= order)
    .reduce<StandingVerification | undefined>((last, one) => (last === undefined || orderOf(one.at) > orderOf(last.at) || (orderOf(one.at) === orderOf(last.at) && one.seq > last.seq) ? one : last), undefined)
}

/**
 * Whether a gauge of a custody ticket may stand on its automatic gauge: verified for custody before, within limits, and not
 * overdue. Nothing for a tape in a hand.
 * @param snapshot a gauge of the ticket
 * @param all verifications on record
 * @param path of the snapshot, for the findings: `ticket.opening`
 * @returns `gauge-not-verified` or `gauge-out-of-limits`
 * @source MPMS-3.1B field verification
 */
export function refuseUnverified({ tank, at, instrument }: Pick<GaugeSnapshot, 'tank' | 'at' | 'instrument'>, all: readonly StandingVerification[], path: string): readonly Finding[] {
  if (instrument === undefined) return []
  const clause = 'MPMS-3.1B field verification'
  const place = `${path}.instrument`
  const notVerified = (limit: string): readonly Finding[] => [{ code: 'gauge-not-verified', path: place, value: instrument.id, limit, clause }]
  const last = verificationInForce(all, tank, instrument.id, at)
  if (last === undefined) return notVerified(`it has not been verified in ${tank} before ${at}; verify it against hand gauges, or gauge by hand`)
  if (last.verdict === 'outside') return [{ code: 'gauge-out-of-limits', path: place, value: `${last.greatest} (${instrument.id}, verified ${last.at})`, limit: `${last.limit}; set it and verify it, or gauge by hand`, clause }]
  if (last.use !== 'custody') return notVerified(`it was verified for inventory only, at ${last.at}; verify it for custody, or gauge by hand`)
  if (last.nextDue !== null && orderOf(at) > orderOf(last.nextDue)) return notVerified(`its verification of ${last.at} was due again by ${last.nextDue}; verify it, or gauge by hand`)
  return []
}

function orderOf(at: string): string {
  const read = parseInstant(at, 'at')
  return read.ok ? read.value.order : at
}
