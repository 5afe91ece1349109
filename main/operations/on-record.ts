import { versionHash, versionInForce, type EntryOf, type Identity } from '../../core/ledger/index.ts'
import type { Product } from '../../core/quantity/index.ts'
import { accepted, refused, type FindingCode, type Outcome } from '../../core/refusal/index.ts'
import type { Tank } from '../../core/tank/index.ts'
import type { Party, Terminal, Version } from '../../core/ticket/index.ts'
import type { LedgerStore } from '../store/index.ts'

/** A tank or product as the ledger has it, and the version that says so. */
export interface InForce<T> { readonly value: T; readonly version: Version }

/** What has been set up in a ledger, as the entries say that set it. */
export interface OnRecord {
  readonly terminals: readonly EntryOf<'terminal-set'>[]
  readonly tanks: readonly EntryOf<'tank-set'>[]
  readonly products: readonly EntryOf<'product-set'>[]
  readonly parties: readonly EntryOf<'party-set'>[]
  readonly identities: readonly EntryOf<'identity-set'>[]
}

export async function readRecord(store: Pick<LedgerStore, 'entriesOfKind'>): Promise<OnRecord> {
  const [terminals, tanks, products, parties, identities] = await Promise.all([
    store.entriesOfKind('terminal-set'), store.entriesOfKind('tank-set'), store.entriesOfKind('product-set'),
    store.entriesOfKind('party-set'), store.entriesOfKind('identity-set'),
  ])
  return { terminals, tanks, products, parties, identities }
}

/** The terminal as it is in force at an instant; without one, as it was entered last. */
export function terminalOn({ terminals }: Pick<OnRecord, 'terminals'>, path: string, at?: string): Outcome<Terminal> {
  const found = at === undefined ? terminals.at(-1) : versionInForce(terminals, '', at)
  if (found) return accepted(found.body.terminal)
  return refused({ code: 'no-terminal', path, value: '', limit: 'name it first with set-terminal', clause: 'HOUSE record' })
}

/** The version of a tank in force at an instant. */
export function tankInForce({ tanks }: Pick<OnRecord, 'tanks'>, code: string, at: string, path: string): Outcome<InForce<Tank>> {
  const entry = versionInForce(tanks, code, at)
  if (entry) return accepted({ value: entry.body.tank, version: { code, seq: entry.seq, hash: versionHash(entry.body.tank) } })
  const others = tanks.filter((one) => one.body.tank.code === code)
  return refused(unknown('unknown-tank', path, code, others.length > 0 ? others.map(fromWhen) : tanks.map((one) => one.body.tank.code)))
}

/** The version of a product in force at an instant. */
export function productInForce({ products }: Pick<OnRecord, 'products'>, code: string, at: string, path: string): Outcome<InForce<Product>> {
  const entry = versionInForce(products, code, at)
  if (entry) return accepted({ value: entry.body.product, version: { code, seq: entry.seq, hash: versionHash(entry.body.product) } })
  const others = products.filter((one) => one.body.product.code === code)
  return refused(unknown('unknown-product', path, code, others.length > 0 ? others.map(fromWhen) : products.map((one) => one.body.product.code)))
}

function fromWhen(entry: EntryOf<'tank-set'> | EntryOf<'product-set'>): string {
  return `${entry.kind === 'tank-set' ? entry.body.tank.code : entry.body.product.code} from ${entry.body.effectiveFrom} on`
}

/** The version of the instrument of a name that stands on a tank, where one is on record. */
export function instrumentInForce(instruments: readonly EntryOf<'instrument-set'>[], code: string, tank: string, at: string): Version | undefined {
  const entry = versionInForce(instruments, code, at)
  if (entry === undefined || (entry.body.instrument.tank ?? tank) !== tank) return undefined
  return { code, seq: entry.seq, hash: versionHash(entry.body.instrument) }
}

/** A party as it is in force at an instant; without one, as it was entered last. */
export function partyOn({ parties }: Pick<OnRecord, 'parties'>, code: string, path: string, at?: string): Outcome<Party> {
  const found = at === undefined ? parties.findLast((entry) => entry.body.party.code === code) : versionInForce(parties, code, at)
  return found ? accepted(found.body.party) : refused(unknown('unknown-party', path, code, parties.map((entry) => entry.body.party.code)))
}

export function identityOn({ identities }: Pick<OnRecord, 'identities'>, id: string, path: string): Outcome<Identity> {
  const last = identities.findLast((entry) => entry.body.identity.id === id)
  return last ? accepted(last.body.identity) : refused(unknown('unknown-identity', path, id, identities.map((entry) => entry.body.identity.id)))
}

function unknown(code: FindingCode, path: string, value: string, known: readonly string[]) {
  return { code, path, value, limit: known.length > 0 ? [...new Set(known)].join(', ') : 'nothing yet', clause: 'HOUSE record' } as const
}
