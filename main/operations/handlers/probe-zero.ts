import { probeProfile, rezeroed, type Rezero, type WrittenProbe } from '../../../core/gauge/index.ts'
import type { EntryOf } from '../../../core/ledger/index.ts'
import { accepted, allOf, andThen, orRefuse, refused, type Finding, type Outcome } from '../../../core/refusal/index.ts'
import { kilopascalsGauge, parsePressure } from '../../../core/units/index.ts'
import type { LedgerStore } from '../../store/index.ts'
import type { Handler } from '../context.ts'
import { atHead } from '../at-head.ts'
import { readRecord, tankInForce } from '../on-record.ts'
import { post } from '../post.ts'
import { notInFuture } from '../times.ts'
import { enteredBy } from '../who.ts'

export const zeroProbe: Handler<'zero-probe'> = async (input, context, { signal }) => atHead(context.store, signal, async (head) => {
  const { tank, readAt, by, probe, modules, reason } = input
  const [record, earlier] = await Promise.all([readRecord(context.store), zerosOf(context.store, tank)])
  const at = orRefuse(notInFuture(readAt, context.now(), 'readAt')).text
  const inForce = orRefuse(tankInForce(record, tank, at, 'tank'))
  const found = orRefuse(allOf<{ set: readonly Rezero[]; applied: null; reason: string }>({
    set: andThen(probeProfile({ ...probe, capacityTable: inForce.value.capacityTable }, 'probe'), (profile) => rezeroed(profile, modules ?? 'automatic', 'modules')),
    applied: appliedAsStanding(probe, standingOf(earlier)),
    reason: reasonOf(modules, reason),
  }))
  const posted = await post(context.store, {
    kind: 'probe-zeroed', at: context.now(), by: enteredBy(context, by),
    body: { tank, readAt: at, automatic: modules === undefined, reason: found.reason, modules: [...found.set], probe },
  }, { expectedHead: head.hash })
  return { ...posted, modules: [...found.set] }
})

export const probeZeros: Handler<'probe-zeros'> = async ({ tank }, { store }) => {
  const entries = await zerosOf(store, tank)
  return {
    standing: [...standingOf(entries)].map(([module, offset]) => ({ module, offset })),
    history: entries.toReversed().map(({ seq, by, body: { readAt, automatic, reason, modules } }) => ({ seq, readAt, by, automatic, reason, modules: modules.map((one) => ({ ...one })) })),
  }
}

async function zerosOf(store: LedgerStore, tank: string): Promise<readonly EntryOf<'probe-zeroed'>[]> {
  return (await store.entriesOfKind('probe-zeroed')).filter((entry) => entry.body.tank === tank)
}

/** The last offset of each module. */
function standingOf(entries: readonly EntryOf<'probe-zeroed'>[]): ReadonlyMap<string, string> {
  return new Map(entries.flatMap((entry) => entry.body.modules.map(({ module, after }) => [module, after] as const)))
}

/** A new zero goes on from the old one: the reading must have had the offsets taken off that stand in the ledger. */
function appliedAsStanding(probe: WrittenProbe, standing: ReadonlyMap<string, string>): Outcome<null> {
  const findings = probe.modules.flatMap(({ name, offset }, i): Finding[] => {
    const expected = standing.get(name) ?? '0 kPa'
    const [applied, stands] = [parsePressure(offset ?? '0 kPa', ''), parsePressure(expected, '')]
    if (!applied.ok || !stands.ok || kilopascalsGauge(applied.value) === kilopascalsGauge(stands.value)) return []
    return [{ code: 'out-of-range', path: `probe.modules.${i}.offset`, value: offset ?? 'none', limit: `the offset that stands in the ledger, ${expected}`, clause: 'MPMS-16.2 zero checks of emerged sensors' }]
  })
  return findings.length > 0 ? refused(...findings) : accepted(null)
}

function reasonOf(modules: readonly string[] | undefined, reason: string | undefined): Outcome<string> {
  if (modules === undefined) return accepted('emerged and within the zero limit')
  const said = (reason ?? '').trim()
  return said === '' ? refused({ code: 'reason-missing', path: 'reason', value: reason ?? '', limit: 'say in a sentence why the modules are set to zero', clause: 'MPMS-16.2 zero checks of emerged sensors' }) : accepted(said)
}
