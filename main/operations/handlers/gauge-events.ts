import type { GaugeEvent } from '../../../core/ledger/index.ts'
import { accepted, allOf, orRefuse, refused, type Finding, type Outcome } from '../../../core/refusal/index.ts'
import type { LedgerStore } from '../../store/index.ts'
import { atHead } from '../at-head.ts'
import type { Handler } from '../context.ts'
import { post } from '../post.ts'
import { notInFuture } from '../times.ts'
import { enteredBy } from '../who.ts'

type Event = Omit<GaugeEvent, 'source'>

export const recordGaugeEvent: Handler<'record-gauge-event'> = async ({ event, by: given }, context, { signal }) => {
  const by = enteredBy(context, given)
  return atHead(context.store, signal, async (head) => {
    orRefuse(allOf<{ tank: null; at: unknown; stands: null }>({
      tank: tanksKnown([event.tank], await tanksOf(context.store), () => 'event.tank'),
      at: notInFuture(event.at, context.now(), 'event.at'),
      stands: await toClear(event, context.store),
    }))
    return post(context.store, { kind: 'gauge-event', at: context.now(), by, body: { event: { ...event, source: 'hand' } } }, { expectedHead: head.hash })
  })
}

export const recordGaugeEvents: Handler<'record-gauge-events'> = async ({ events, by: given }, context, { signal }) => {
  const by = enteredBy(context, given)
  const { store } = context
  return atHead(store, signal, async (head) => {
    const tanks = await tanksOf(store)
    const known = new Set((await store.entriesOfKind('gauge-event')).map(({ body }) => keyOf(body.event)))
    orRefuse(allOf<Record<string, unknown>>({
      tanks: tanksKnown(events.map(({ tank }) => tank), tanks, (i) => `events.${i}.tank`),
      ...Object.fromEntries(events.map((event, i) => [String(i), notInFuture(event.at, context.now(), `events.${i}.at`)])),
    }))
    const fresh = events.filter((event) => !known.has(keyOf(event)))
    const at = context.now()
    const entries = fresh.length === 0 ? [] : await store.append(fresh.map((event) => ({ kind: 'gauge-event', at, by, body: { event: { ...event, source: 'log' } } })), { expectedHead: head.hash })
    return { recorded: fresh.length, known: events.length - fresh.length, head: entries.at(-1)?.hash ?? head.hash }
  })
}

export const gaugeAlarms: Handler<'gauge-alarms'> = async (_input, { store }) => ({
  alarms: (await store.standingAlarms()).map(({ seq, body: { event: { tank, gauge, event, at, message } } }) => ({
    seq, tank, gauge: gauge ?? null, kind: event === 'fault' ? 'fault' as const : 'alarm' as const, at, message,
  })),
})

async function tanksOf(store: LedgerStore): Promise<readonly string[]> {
  return [...new Set((await store.entriesOfKind('tank-set')).map(({ body }) => body.tank.code))]
}

function tanksKnown(codes: readonly string[], known: readonly string[], path: (i: number) => string): Outcome<null> {
  const findings = codes.flatMap((code, i): readonly Finding[] => (known.includes(code) ? [] : [{ code: 'unknown-tank', path: path(i), value: code, limit: known.length === 0 ? 'nothing yet' : known.join(', '), clause: 'HOUSE record' }]))
  return findings.length > 0 ? refused(...findings) : accepted(null)
}

/** Only what stands can be cleared by hand. */
async function toClear({ tank, gauge, event }: Event, store: LedgerStore): Promise<Outcome<null>> {
  if (event !== 'alarm-cleared' && event !== 'fault-cleared') return accepted(null)
  const kind = event === 'alarm-cleared' ? 'alarm' : 'fault'
  const standing = (await store.standingAlarms()).map(({ body }) => body.event)
  if (standing.some((one) => one.tank === tank && one.gauge === gauge && one.event === kind)) return accepted(null)
  const others = standing.filter((one) => one.event === kind).map((one) => `${one.gauge ?? 'no gauge named'} of ${one.tank}`)
  return refused({ code: 'alarm-not-standing', path: 'event.event', value: `${kind} of ${gauge ?? 'no gauge named'} of ${tank}`, limit: others.length === 0 ? `no ${kind} stands` : `standing: ${others.join(', ')}`, clause: 'HOUSE audit trail' })
}

/** An event that was entered before is not entered again. */
function keyOf({ tank, gauge, at, event }: Event): string {
  return [tank, gauge ?? '', at, event].join('\n')
}
