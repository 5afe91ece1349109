import { z } from 'zod'
import { parseInstant } from '../../core/gauge/index.ts'
import { instantKey, instrumentsDue, openAlarms, type Period, type PeriodStanding } from '../../core/ledger/index.ts'
import type { ClosingFacts, Unshared } from '../../core/reconciliation/index.ts'
import { Refused, wording } from '../../core/refusal/index.ts'
import { instantOfLocal } from '../exchange/local-time.ts'
import type { AsItStood, LedgerStore, RegisterLine } from '../store/index.ts'
import type { Call } from './context.ts'
import { readRecord, tankInForce } from './on-record.ts'
import { reconcileRecord } from './reconcile-ledger.ts'
import { readNames } from './trail-names.ts'
import { verifications } from './verifications.ts'

/** Whether the ledger is whole, in words for a seal. */
export async function ledgerFact(store: LedgerStore, { progress, signal }: Call): Promise<ClosingFacts['ledger']> {
  const { whole, entries, head, differences } = await store.check(progress, signal)
  const [first] = differences
  return { whole, detail: first === undefined ? `${entries} entries, head ${head}` : `${differences.length} differences, the first in ${first.where}: ${first.what}` }
}

/** Everything that is looked at before a period is closed, besides whether the ledger is whole. */
export async function closingFacts(store: AsItStood, period: PeriodStanding, ledger: ClosingFacts['ledger']): Promise<ClosingFacts> {
  const periods = await store.periods()
  const [verified, instruments, events, proposals, names] = await Promise.all([
    verifications(store), store.entriesOfKind('instrument-set'), store.entriesOfKind('gauge-event'), store.proposals(), readNames(store),
  ])
  return {
    period, ledger, before: periods[periods.findIndex(({ name }) => name === period.name) - 1],
    reconciliation: await reconciled(store, period), drafts: await waitingDrafts(store, period), voided: await voidedTickets(store, period), unshared: await unshared(store, period),
    verifications: verified, instruments: instrumentsDue(instruments, verified, period.to),
    alarms: openAlarms(events.map(({ body }) => body.event), period.to).map(({ tank, gauge, at, message }) => ({ tank, gauge: gauge ?? 'the gauge', at, message })),
    proposals: proposals.filter(({ operation }) => operation !== 'close-period').map(({ operation, preparedBy, preparedAt }) => `${operation.replaceAll('-', ' ')} by ${names.at(Infinity)(preparedBy) ?? preparedBy}, ${preparedAt}`),
  }
}

async function reconciled(store: AsItStood, { from, to }: Period): Promise<ClosingFacts['reconciliation']> {
  try {
    return await reconcileRecord(store, { from, to })
  } catch (error) {
    if (!(error instanceof Refused)) throw error
    const record = await readRecord(store)
    const codes = [...new Set(record.tanks.map(({ body }) => body.tank.code))].toSorted()
    return { refused: codes.filter((code) => tankInForce(record, code, to, 'tank').ok).map((tank) => {
      const own = error.findings.filter(({ path, value }) => value === tank || path.startsWith(`${tank} `))
      return { tank, why: (own.length > 0 ? own : error.findings).map(wording).join(' ') }
    }) }
  }
}

const draftSchema = z.looseObject({ opening: z.looseObject({ at: z.string() }).optional(), closing: z.looseObject({ at: z.string() }).optional() })

/** Ticket drafts with a gauge up to the end of the period; one without a time that can be read counts as of its last change. */
async function waitingDrafts(store: AsItStood, { to }: Period): Promise<ClosingFacts['drafts']> {
  const zone = (await readRecord(store)).terminals.at(-1)?.body.terminal.zone ?? 'UTC'
  return (await store.drafts()).filter(({ kind }) => kind === 'transfer').flatMap(({ title, body, savedAt }) => {
    const read = draftSchema.safeParse(body)
    const written = read.success ? [read.data.opening?.at, read.data.closing?.at] : []
    const [first = savedAt] = written.flatMap((text) => instantWritten(text ?? '', zone)).toSorted((a, b) => (instantKey(a) < instantKey(b) ? -1 : 1))
    return instantKey(first) <= instantKey(to) ? [{ title, at: first }] : []
  })
}

function instantWritten(text: string, zone: string): readonly string[] {
  if (parseInstant(text, '').ok) return [text]
  const local = instantOfLocal(text.trim(), zone, '')
  return local.ok ? [local.value] : []
}

const PAGE = 1000

async function voidedTickets(store: AsItStood, { from, to }: Period): Promise<ClosingFacts['voided']> {
  const found: RegisterLine[] = []
  for (let before: number | undefined; ;) {
    const page = await store.register({ from, to, limit: PAGE, before })
    found.push(...page)
    before = page.at(-1)?.seq
    if (page.length < PAGE) break
  }
  return found.flatMap(({ number, voided, replacedBy }) => (voided === null ? [] : [{ number, reason: voided.reason, replacedBy }])).toReversed()
}

/** Movements of the period in tanks and lines where several parties own product, that nobody shared out. */
async function unshared(store: AsItStood, { from, to }: Period): Promise<readonly Unshared[]> {
  const parties = new Map<string, Set<string>>()
  for (const { code, product, party } of (await store.book(to)).owners) {
    const place = `${code}\n${product}`
    parties.set(place, (parties.get(place) ?? new Set()).add(party))
  }
  const several = new Set([...parties].flatMap(([place, owners]) => (owners.size > 1 ? [place] : [])))
  const tanks = new Set([...several].map((place) => place.split('\n')[0] ?? ''))
  const found = (await Promise.all([...tanks].map((tank) => store.unshared(to, PAGE, tank)))).flat()
  return found.filter((movement) => several.has(`${movement.tank}\n${movement.product}`) && instantKey(movement.bookedAt) > instantKey(from))
}
