import type { PeriodStanding } from '../../core/ledger/index.ts'
import type { LateLine, ReportedPeriod } from '../../core/reconciliation/index.ts'
import { canonicalJson, periodHolding, sha256Hex } from '../../core/ledger/index.ts'
import type { LedgerStore, Movement } from '../store/index.ts'
import { identityOn, type OnRecord } from './on-record.ts'

/** Late corrections as they are listed: each names the entry that it corrects, and the ticket of that entry. */
export async function lateLines(store: LedgerStore, movements: readonly Movement[]): Promise<LateLine[]> {
  const lines: LateLine[] = []
  for (const movement of movements) {
    if (movement.concerns === null) continue
    const { seq, kind, number, place, tank, product, change, unit, openedAt, closedAt, bookedAt, concerns, corrects } = movement
    lines.push({
      seq, kind, number, place, code: tank, product, nsv: { value: change, unit }, openedAt, closedAt, bookedAt, concerns,
      corrects: corrects === null ? null : { seq: corrects, number: (await store.movementsOf(corrects))[0]?.number ?? '' },
    })
  }
  return lines
}

/** Late corrections that concern a period, and those booked in it. */
export async function lateOf(store: LedgerStore, period: PeriodStanding): Promise<Pick<ReportedPeriod, 'concerning' | 'booked'>> {
  const booked = (await store.movements(period.from, period.to)).filter(({ concerns }) => concerns !== null)
  return { concerning: await lateLines(store, await store.lateOfPeriod(period.name)), booked: await lateLines(store, booked) }
}

/** An entry as a late correction, where it is one; and the late corrections of it. */
export async function lateOfEntry(store: LedgerStore, seq: number): Promise<{ late: LateLine | null; corrections: LateLine[] }> {
  const own = await store.movementsOf(seq)
  const [late = null] = await lateLines(store, own)
  const period = own[0] && periodHolding(own[0].bookedAt, await store.periods())
  const concerning = period === undefined ? [] : await store.lateOfPeriod(period.name)
  return { late, corrections: await lateLines(store, concerning.filter(({ corrects }) => corrects === seq)) }
}

/** A period as the report of its time names it. */
export async function reportedPeriod(store: LedgerStore, period: PeriodStanding, record: Pick<OnRecord, 'identities'>): Promise<ReportedPeriod> {
  const closing = await store.closing(period)
  const late = await lateOf(store, period)
  if (closing === undefined) return { name: period.name, closed: null, ...late }
  const { seal, signature } = closing.body
  const signer = identityOn(record, signature.identity, '')
  return {
    name: period.name, ...late,
    closed: {
      entry: closing.seq, at: seal.closedAt, by: seal.closedBy, signedBy: signer.ok ? signer.value.name : signature.identity,
      sealHash: sha256Hex(canonicalJson(seal)), head: seal.head,
    },
  }
}
