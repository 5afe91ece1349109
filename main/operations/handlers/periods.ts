import { parseInstant } from '../../../core/gauge/index.ts'
import { canonicalJson, lastClosed, refuseOpening, sha256Hex, type PeriodStanding } from '../../../core/ledger/index.ts'
import { orRefuse, Refused, type Finding } from '../../../core/refusal/index.ts'
import type { LedgerStore } from '../../store/index.ts'
import { atHead } from '../at-head.ts'
import { usualBooking } from '../bookable.ts'
import type { Handler, LedgerContext } from '../context.ts'
import { lateOf } from '../late-lines.ts'
import { firstMovement } from '../first-movement.ts'
import { identityOn, readRecord, terminalOn } from '../on-record.ts'
import { periodNamed } from '../period-on-record.ts'
import { post } from '../post.ts'
import { suggestedPeriod } from '../suggested-period.ts'
import { enteredBy } from '../who.ts'

export const listPeriods: Handler<'periods'> = async (_input, context) => {
  const { store, now } = context
  const periods = await store.periods()
  const open = periods.some(({ closedBy }) => closedBy === null)
  return {
    periods: await Promise.all(periods.map((period) => standing(store, period))),
    next: await suggestion(context, periods), bookedAt: open && lastClosed(periods) !== undefined ? usualBooking(periods, now()) : null,
  }
}

export const openPeriod: Handler<'open-period'> = async ({ name, from, to, by }, context, { signal }) => atHead(context.store, signal, async (head) => {
  const { store, now } = context
  const periods = await store.periods()
  const usual = await suggestion(context, periods)
  if (usual === null && (name === undefined || from === undefined || to === undefined)) orRefuse(terminalOn(await readRecord(store), 'ledger', now()))
  const period = { name: name ?? usual?.name ?? '', from: from ?? usual?.from ?? '', to: to ?? usual?.to ?? '' }
  const findings = [...misnamed(period.name), ...refuseOpening(period, periods)]
  if (findings.length > 0) throw new Refused(findings)
  const posted = await post(store, { kind: 'period-opened', at: now(), by: enteredBy(context, by), body: { period } }, { expectedHead: head.hash })
  return { ...posted, period }
})

export const readPeriod: Handler<'read-period'> = async ({ period: name }, { store }) => {
  const period = orRefuse(await periodNamed(store, name))
  const closing = await store.closing(period)
  const signer = closing && identityOn(await readRecord(store), closing.body.signature.identity, '')
  return {
    period: await standing(store, period), seal: closing?.body.seal ?? null, signature: closing?.body.signature ?? null,
    signedBy: signer?.ok === true ? signer.value.name : null, ...await lateOf(store, period),
  }
}

export const readBalances: Handler<'balances'> = async ({ at, period: name }, { store, now }) => {
  if (at !== undefined && name !== undefined) throw new Refused([{ code: 'value-not-used', path: 'at', value: at, limit: `the end of ${name} is taken; give one of the two`, clause: 'HOUSE book' }])
  const instant = name === undefined ? orRefuse(parseInstant(at ?? now(), 'at')).text : orRefuse(await periodNamed(store, name)).to
  const { balances, owners, since, changes } = await store.book(instant)
  return { at: instant, balances, owners, since: since === null ? null : { period: since.seal.period.name, entry: since.seq }, changes }
}

async function standing(store: LedgerStore, period: PeriodStanding) {
  const { name, from, to, seq } = period
  const closing = await store.closing(period)
  if (closing === undefined) return { name, from, to, seq, closed: null }
  const { seal } = closing.body
  return { name, from, to, seq, closed: { seq: closing.seq, at: seal.closedAt, by: seal.closedBy, sealHash: sha256Hex(canonicalJson(seal)), signedOff: seal.checks.filter(({ holds }) => !holds).length } }
}

/** By the terminal's clock, from the month of the first movement, of the last gauge or of today; null without a terminal. */
async function suggestion({ store, now }: LedgerContext, periods: readonly PeriodStanding[]) {
  const terminal = (await readRecord(store)).terminals.at(-1)?.body.terminal
  if (terminal === undefined) return null
  if (periods.length > 0) return suggestedPeriod(periods, terminal, { lastGauge: now() })
  const gauges = (await store.lastGaugeEntries()).map(({ entry }) => gaugedAt(entry)).toSorted((a, b) => Date.parse(a) - Date.parse(b))
  return suggestedPeriod([], terminal, { firstMovement: await firstMovement(store, now()), lastGauge: gauges.at(-1) ?? now() })
}

function gaugedAt(entry: Awaited<ReturnType<LedgerStore['lastGaugeEntries']>>[number]['entry']): string {
  switch (entry.kind) {
    case 'inventory-measured': return entry.body.snapshot.at
    case 'ticket-posted': return entry.body.ticket.closing.at
    case 'stock-moved': return entry.body.movement.at
  }
}

function misnamed(name: string): readonly Finding[] {
  if (/^[A-Za-z0-9][A-Za-z0-9 ._-]{0,39}$/.test(name)) return []
  return [{ code: 'unreadable-value', path: 'name', value: name, limit: 'a name of up to 40 letters and digits, as 2026-09', clause: 'HOUSE periods' }]
}
