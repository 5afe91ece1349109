import { standingOf, type StandingVerification } from '../gauge/index.ts'
import type { Entry, EntryKind, EntryOf, Identity } from './entry.ts'
import { instantKey } from './instant.ts'
import type { Period } from './period.ts'

/** An entry that set a tank or a product, and from when on. */
interface DatedVersion { readonly seq: number; readonly from: string }

/**
 * What the entries so far have set up, as far as later entries are computed from it. It grows with what is set up, not with
 * what is booked; tanks and products themselves are left in the ledger and named by their entry.
 */
export interface OnRecord {
  readonly versions: ReadonlyMap<string, readonly DatedVersion[]>
  readonly terminals: readonly EntryOf<'terminal-set'>[]
  readonly parties: ReadonlyMap<string, readonly EntryOf<'party-set'>[]>
  readonly identities: ReadonlyMap<string, Identity>
  /** Instruments by their code. */
  readonly instruments: ReadonlyMap<string, readonly EntryOf<'instrument-set'>[]>
  /** The offset of each module of a probe that was set to zero, by tank. */
  readonly zeros: ReadonlyMap<string, ReadonlyMap<string, string>>
  /** Verifications of automatic gauges, by tank and gauge. */
  readonly verifications: ReadonlyMap<string, readonly StandingVerification[]>
  readonly periods: ReadonlyMap<string, Period>
}

/** A record that goes on with each entry. */
export interface OpenRecord extends OnRecord {
  readonly versions: Map<string, DatedVersion[]>
  readonly terminals: EntryOf<'terminal-set'>[]
  readonly parties: Map<string, EntryOf<'party-set'>[]>
  readonly identities: Map<string, Identity>
  readonly instruments: Map<string, EntryOf<'instrument-set'>[]>
  readonly zeros: Map<string, Map<string, string>>
  readonly verifications: Map<string, StandingVerification[]>
  readonly periods: Map<string, Period>
}

/** The record before the first entry. */
export function emptyRecord(): OpenRecord {
  return { versions: new Map(), terminals: [], parties: new Map(), identities: new Map(), instruments: new Map(), zeros: new Map(), verifications: new Map(), periods: new Map() }
}

type Put<K extends EntryKind> = (record: OpenRecord, entry: EntryOf<K>) => void

const PUTS: { readonly [K in EntryKind]?: Put<K> } = {
  'terminal-set': (record, entry) => { record.terminals.push(entry) },
  'tank-set': (record, { seq, body }) => { added(record.versions, versionKey('tank', body.tank.code), { seq, from: instantKey(body.effectiveFrom) }) },
  'product-set': (record, { seq, body }) => { added(record.versions, versionKey('product', body.product.code), { seq, from: instantKey(body.effectiveFrom) }) },
  'party-set': (record, entry) => { added(record.parties, entry.body.party.code, entry) },
  'identity-set': (record, { body: { identity } }) => { record.identities.set(identity.id, identity) },
  'instrument-set': (record, entry) => { added(record.instruments, entry.body.instrument.code, entry) },
  'gauge-verified': (record, { seq, body: { verification, result } }) => {
    added(record.verifications, gaugeKey(verification.tank, verification.gauge), standingOf(seq, verification, result))
  },
  'probe-zeroed': (record, { body: { tank, modules } }) => {
    const offsets = record.zeros.get(tank) ?? new Map<string, string>()
    for (const { module, after } of modules) offsets.set(module, after)
    record.zeros.set(tank, offsets)
  },
  'period-opened': (record, { body: { period } }) => { record.periods.set(period.name, period) },
}

/** Takes one more entry on record. */
export function putOnRecord(record: OpenRecord, entry: Entry): void {
  put(record, entry)
}

function put<K extends EntryKind>(record: OpenRecord, entry: EntryOf<K>): void {
  PUTS[entry.kind]?.(record, entry)
}

function added<T>(lists: Map<string, T[]>, key: string, value: T): void {
  const list = lists.get(key)
  if (list === undefined) lists.set(key, [value])
  else list.push(value)
}

function versionKey(kind: 'tank' | 'product', code: string): string {
  return `${kind} ${code}`
}

/** Key of an automatic gauge in {@link OnRecord.verifications}. */
export function gaugeKey(tank: string, gauge: string): string {
  return `${tank}\n${gauge}`
}

/**
 * Number of the entry whose tank or product is in force at an instant: the latest effective date not after it, and of several
 * with that date the one posted last. Undefined where none is in force yet.
 * @param at UTC instant
 * @source HOUSE effective-date
 */
export function entryInForce(record: Pick<OnRecord, 'versions'>, kind: 'tank' | 'product', code: string, at: string): number | undefined {
  const moment = instantKey(at)
  let found: DatedVersion | undefined
  for (const version of record.versions.get(versionKey(kind, code)) ?? []) {
    if (version.from <= moment && (found === undefined || version.from >= found.from)) found = version
  }
  return found?.seq
}
