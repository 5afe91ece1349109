import { parseInstant } from '../../../core/gauge/index.ts'
import { instantKey, versionInForce, type EntryOf, type Instrument } from '../../../core/ledger/index.ts'
import { accepted, allOf, orRefuse } from '../../../core/refusal/index.ts'
import type { Handler } from '../context.ts'
import type { INSTRUMENT_STATES } from '../contracts/instruments.ts'
import { readRecord, tankInForce } from '../on-record.ts'
import { post } from '../post.ts'
import { enteredBy } from '../who.ts'

const DAY = 86_400_000

/** An instrument may be entered for a tank that is on record when it comes into force. */
export const setInstrument: Handler<'set-instrument'> = async ({ instrument, effectiveFrom, by }, context) => {
  const record = await readRecord(context.store)
  const from = parseInstant(effectiveFrom, 'effectiveFrom')
  orRefuse(allOf<{ from: unknown; tank: unknown }>({
    from, tank: instrument.tank === undefined ? accepted(null) : tankInForce(record, instrument.tank, from.ok ? from.value.text : context.now(), 'instrument.tank'),
  }))
  return post(context.store, { kind: 'instrument-set', at: context.now(), by: enteredBy(context, by), body: { instrument, effectiveFrom } })
}

export const listInstruments: Handler<'list-instruments'> = async ({ at: asked, tank }, { store, now }) => {
  const at = asked === undefined ? now() : orRefuse(parseInstant(asked, 'at')).text
  const [entries, verifications] = await Promise.all([store.entriesOfKind('instrument-set'), store.entriesOfKind('gauge-verified')])
  const codes = [...new Set(entries.map(({ body }) => body.instrument.code))].toSorted()
  const inForce = codes.flatMap((code) => versionInForce(entries, code, at) ?? []).filter(({ body }) => tank === undefined || body.instrument.tank === tank)
  return {
    at,
    instruments: inForce.map(({ seq, body: { instrument, effectiveFrom } }) => {
      const last = lastVerification(instrument, verifications, at)
      const dueAt = dueOf(instrument, last)
      return {
        instrument, seq, effectiveFrom, dueAt, state: stateOf(instrument, last, dueAt, at),
        verified: last === undefined ? null : { seq: last.seq, at: last.body.verification.at, verdict: last.body.result.verdict },
      }
    }),
  }
}

type Verified = EntryOf<'gauge-verified'>

/** The last verification of an instrument up to an instant, by the name that gauges have on their tank. */
function lastVerification({ code, tank }: Instrument, verifications: readonly Verified[], at: string): Verified | undefined {
  const own = verifications.filter(({ body: { verification } }) => verification.gauge === code && (tank === undefined || verification.tank === tank) && instantKey(verification.at) <= instantKey(at))
  return own.toSorted((a, b) => (instantKey(a.body.verification.at) < instantKey(b.body.verification.at) ? -1 : 1)).at(-1)
}

/** The sooner of what the verification itself says and so many days after it. */
function dueOf({ verifyEveryDays }: Instrument, last: Verified | undefined): string | null {
  if (last === undefined) return null
  const { at, nextDue } = last.body.verification
  const byDays = verifyEveryDays === undefined ? undefined : `${new Date(Date.parse(at) + verifyEveryDays * DAY).toISOString().slice(0, 19)}Z`
  const due = [byDays, nextDue].filter((one) => one !== undefined).toSorted((a, b) => (instantKey(a) < instantKey(b) ? -1 : 1))
  return due[0] ?? null
}

function stateOf({ inService, verifyEveryDays }: Instrument, last: Verified | undefined, dueAt: string | null, at: string): (typeof INSTRUMENT_STATES)[number] {
  if (!inService) return 'out-of-service'
  if (last?.body.result.verdict === 'outside') return 'due'
  if (dueAt !== null) return instantKey(dueAt) < instantKey(at) ? 'due' : 'in-time'
  if (last !== undefined || verifyEveryDays === undefined) return 'no-interval'
  return 'never-verified'
}
