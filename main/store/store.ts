import { STOCK_MOVEMENTS, type ClosingCheck, type Entry, type EntryKind, type EntryOf, type PeriodStanding, type Posting } from '../../core/ledger/index.ts'
import type { Words } from '../../core/reconciliation/index.ts'
import type { Software } from '../../core/ticket/index.ts'
import type { Progress } from '../operations/contracts/index.ts'
import type { Head } from './head.ts'
import type { ChainVerified } from './verify-chain.ts'
import type { Surroundings } from './surroundings.ts'
import type { TrailFilter, TrailPage } from './trail.ts'
import type { z } from 'zod'
import type { registerLineSchema } from '../operations/contracts/tickets.ts'
import type { BookAt, SealFigures } from './sealed.ts'

export type RegisterLine = z.output<typeof registerLineSchema>

export type { Head }

/** A signed document that belongs to an entry. */
export interface StoredDocument { readonly sha256: string; readonly name: string; readonly bytes: Uint8Array }

/** What changes the book: a ticket, an adjustment, a movement inside the terminal, or any of these of a closed period taken back. */
export const MOVEMENT_KINDS = ['receipt', 'delivery', 'adjustment', 'correction', ...STOCK_MOVEMENTS] as const

/** One net-standard-volume change of a tank or line that is booked, as the movement projection holds it. */
export interface Movement {
  readonly seq: number
  readonly kind: (typeof MOVEMENT_KINDS)[number]
  /** Ticket number, reference of a stock movement, or empty. */
  readonly number: string
  readonly place: 'tank' | 'line'
  readonly tank: string; readonly product: string
  /** Instants of opening and closing gauge; for an adjustment both are its effective time. */
  readonly openedAt: string; readonly closedAt: string
  /** When it counts in the book. */
  readonly bookedAt: string
  /** The closed period it concerns, the entry it corrects, and the entry that took it back later; null where none. */
  readonly concerns: string | null; readonly corrects: number | null; readonly correctedBy: number | null
  /** The entry that voided it; null while it stands. */
  readonly voidedBy: number | null
  /** Net standard volume in the tank at both gauges; empty for an adjustment. */
  readonly openingNsv: string; readonly closingNsv: string
  /** Signed change of the tank's book. */
  readonly change: string; readonly unit: string
}

/** What ever moved a tank in some time, voided or taken back since or not: what counts in the book in it, and what was between its two gauges. */
export interface EverMoved { readonly booked: readonly Movement[]; readonly underWay: readonly Movement[] }

/** A share of a movement, or of a change of owner in place, that counts. */
export interface Allocation {
  readonly seq: number
  /** The entry whose change it is a share of; null for a change of owner in place. */
  readonly of: number | null
  readonly tank: string; readonly product: string; readonly party: string
  readonly at: string; readonly nsv: string; readonly unit: string
}

/** One measured inventory of a tank. */
export interface Measurement { readonly seq: number; readonly tank: string; readonly product: string; readonly at: string; readonly nsv: string; readonly unit: string }

export interface RegisterFilter {
  readonly search?: string | undefined; readonly tank?: string | undefined; readonly product?: string | undefined
  readonly from?: string | undefined; readonly to?: string | undefined
  readonly limit: number
  /** Only tickets whose entry is before this one. */
  readonly before?: number | undefined
}

export interface StoredDraft { readonly id: string; readonly kind: string; readonly title: string; readonly body: unknown; readonly savedAt: string }

/** An operation that somebody prepared and somebody else may do. */
export interface StoredProposal { readonly id: string; readonly operation: string; readonly input: unknown; readonly preparedBy: string; readonly preparedAt: string; readonly note: string }

/** A difference that a check of the store found. */
export interface Difference { readonly where: string; readonly what: string }
export interface LedgerCheck { readonly whole: boolean; readonly entries: number; readonly tickets: number; readonly recomputed: number; readonly head: string; readonly differences: readonly Difference[]
  /** What stands as it was posted and is worth a look: entries dated before the one that they follow. */
  readonly noticed: readonly Difference[]
}

/** A ledger as it stood after some entry, as far as a period is closed by it. */
export type AsItStood = Pick<LedgerStore, 'head' | 'entriesOfKind' | 'periods' | 'register' | 'book' | 'unshared' | 'measurements' | 'everMoved' | 'drafts' | 'proposals'>

/** By what computed entries are made again. */
export interface Recomputes {
  readonly software: Software
  /** The checks before a period is closed, from the ledger as it stood then and in the words of its seal; those that no entry decides are not held against the seal. */
  closingChecks(ledger: AsItStood, period: PeriodStanding, words: Words): Promise<readonly Omit<ClosingCheck, 'signedOff'>[]>
}

/** Thrown by {@link LedgerStore.append} when another posting came first; the caller builds its entry again. */
export class HeadMoved extends Error {
  constructor() {
    super('Another entry was posted first.')
    this.name = 'HeadMoved'
  }
}

/** An entry that holds a gauge of a tank. */
export type GaugeEntry = EntryOf<'inventory-measured'> | EntryOf<'ticket-posted'> | EntryOf<'stock-moved'>

/** What is kept beside an entry and no evidence itself: it is there with its entry, or neither is. */
export interface Secrets {
  /** What the passphrase of a person is checked against. */
  readonly passphrase?: { readonly person: string; readonly verifier: string } | undefined
  /** Private key of an identity, encrypted under its passphrase. */
  readonly key?: { readonly identity: string; readonly key: string } | undefined
}

/** The one door to what is stored. Entries are never updated or deleted. */
export interface LedgerStore {
  /** Where the ledger is kept, and by what; the place without user and password. */
  readonly where: { readonly kind: 'file' | 'server'; readonly place: string; readonly version: string }
  /** The disk or the clock that the ledger stands on. */
  surroundings(): Promise<Surroundings>
  head(): Promise<Head>
  /**
   * Places postings at the end of the chain with their documents and secrets, in one transaction: all or nothing.
   * @throws HeadMoved when `expectedHead` is given and is no longer the head's hash
   */
  append(postings: readonly Posting[], options?: { readonly expectedHead?: string; readonly documents?: readonly StoredDocument[]; readonly secrets?: Secrets }): Promise<readonly Entry[]>
  /**
   * Does something while nobody else posts, for what takes so long that others come first again and again. What it posts
   * through the store that it is given stands once it is through, all of it or nothing; no other store may be used in it.
   */
  alone<T>(act: (store: LedgerStore) => Promise<T>): Promise<T>
  entry(seq: number): Promise<Entry | undefined>
  /** Entries in order of sequence, in batches; `from` and `to` included. */
  entries(from?: number, to?: number): AsyncIterable<Entry>
  /** Newest first. */
  latestEntries(limit: number, before?: number): Promise<readonly Entry[]>
  /** All entries of a kind, oldest first; meant for set-up kinds, which are few. */
  entriesOfKind<K extends EntryKind>(kind: K): Promise<readonly EntryOf<K>[]>
  document(sha256: string): Promise<StoredDocument | undefined>
  /** How many tickets were ever numbered; the next ticket takes this plus one. */
  ticketCount(): Promise<number>
  register(filter: RegisterFilter): Promise<readonly RegisterLine[]>
  registerLine(number: string): Promise<RegisterLine | undefined>
  ticketEntry(number: string): Promise<EntryOf<'ticket-posted'> | undefined>
  /** Movements not voided that count in the book in (from, to], in that order; one tank or all. */
  movements(from: string, to: string, tank?: string): Promise<readonly Movement[]>
  /** Movements not voided of a tank whose time between gauges overlaps (from, to). */
  overlapping(tank: string, from: string, to: string): Promise<readonly Movement[]>
  /** What ever moved a tank in (from, to], voided or taken back since or not. */
  everMoved(tank: string, from: string, to: string): Promise<EverMoved>
  /** Measured inventories with from ≤ at ≤ to. */
  measurements(from: string, to: string, tank?: string): Promise<readonly Measurement[]>
  /** The last inventory, ticket or stock movement of each tank: the entry that holds its last gauge. */
  lastGaugeEntries(): Promise<readonly { readonly tank: string; readonly entry: GaugeEntry }[]>
  /** Everything that an entry booked, whether it still stands or not. */
  movementsOf(seq: number): Promise<readonly Movement[]>
  /** Stock movements, newest first. */
  stockMovements(limit: number, before?: number): Promise<readonly EntryOf<'stock-moved'>[]>
  /** By which entry each of some stock movements was voided; those that stand are left out. */
  stockVoids(seqs: readonly number[]): Promise<ReadonlyMap<number, EntryOf<'stock-voided'>>>
  /** Owners' shares of one product in one tank or line that count, in order of time. */
  allocations(tank: string, product: string): Promise<readonly Allocation[]>
  /** Whether what an entry booked of one product in one place is shared out. */
  isShared(seq: number, tank: string, product: string): Promise<boolean>
  /** Movements that stand, count in the book at an instant and were not shared out by then; the newest first. */
  unshared(at: string, limit: number, tank?: string): Promise<readonly Movement[]>
  /** Every period that was opened, in order of time. */
  periods(): Promise<readonly PeriodStanding[]>
  /** The entry that closed a period, with its seal; undefined while it is open. */
  closing(period: PeriodStanding): Promise<EntryOf<'period-closed'> | undefined>
  /** What the seal of a period must say if it is closed after the last entry. */
  sealFigures(period: PeriodStanding): Promise<SealFigures>
  /** Book per place and product, and per owner, at an instant: from the last seal before it, or with `whole` from the beginning. */
  book(at: string, from?: 'seal' | 'whole'): Promise<BookAt>
  /** What a seal counts in a period, and the entries before its closing one. */
  counts(period: PeriodStanding, head: number): Promise<SealFigures['counts']>
  /** Late corrections that concern a closed period and stand. */
  lateOfPeriod(name: string): Promise<readonly Movement[]>
  /** The audit trail, newest first: at most so many entries before one. */
  trail(filter: TrailFilter, limit: number, before?: number): Promise<TrailPage>
  /** The events that raised the alarms and faults of gauges that stand. */
  standingAlarms(): Promise<readonly EntryOf<'gauge-event'>[]>
  drafts(): Promise<readonly StoredDraft[]>
  saveDraft(draft: StoredDraft): Promise<void>
  discardDraft(id: string): Promise<boolean>
  /** Private key of an identity, encrypted under its passphrase. */
  protectedKey(identity: string): Promise<string | undefined>
  /** What the passphrase of a person is checked against. */
  passphraseVerifier(person: string): Promise<string | undefined>
  /** What waits for approval, oldest first. */
  proposals(): Promise<readonly StoredProposal[]>
  saveProposal(proposal: StoredProposal): Promise<void>
  /** Takes a proposal away: undefined where it is not there, or where another desk took it first. */
  takeProposal(id: string): Promise<StoredProposal | undefined>
  /** Follows the chain alone, at the speed of its hash, to its end or to the first entry that does not hold. */
  verifyChain(step?: (done: number) => Promise<void>): Promise<ChainVerified>
  /** Checks the file, every entry, every document and every projection; and, given by what, makes every computed entry again. */
  check(progress: (step: Progress) => void, signal: AbortSignal, recompute?: Recomputes): Promise<LedgerCheck>
  /**
   * Writes the whole ledger as it stands at this moment, side tables too, into a SQLite file that is empty or not there,
   * while others go on posting.
   * @throws the signal's reason when it was cancelled; what was written until then is left to the caller
   */
  copyTo(path: string, progress: (step: Progress) => void, signal: AbortSignal): Promise<void>
  /**
   * Copies the whole ledger as it stands at this moment, side tables too, into an empty database of a PostgreSQL server:
   * checked whole before it is there at all, and nothing of it when it was cancelled or does not hold.
   */
  copyToServer(address: string, progress: (step: Progress) => void, signal: AbortSignal): Promise<{ readonly entries: number; readonly documents: number; readonly tickets: number; readonly head: Head }>
  close(): Promise<void>
}
