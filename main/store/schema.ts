/** The tables of a ledger file, as queries see them. Booked quantities are decimal text; instants are as they were written. */
export interface Schema {
  /** The chain. Triggers refuse UPDATE and DELETE. */
  readonly entry: EntryTable
  /** Signed documents, by the entry that names them. Triggers refuse UPDATE and DELETE. */
  readonly document: DocumentTable
  // projections: made from the entries, and rebuilt from them with the same rows
  readonly ticket: TicketTable
  readonly movement: MovementTable
  readonly measurement: MeasurementTable
  readonly allocation: AllocationTable
  readonly period: PeriodTable
  readonly alarm: AlarmTable
  readonly trail: TrailTable
  readonly trail_about: TrailAboutTable
  readonly ticket_word: TicketWordTable
  // side tables: no evidence, may change
  readonly draft: DraftTable
  readonly protected_key: ProtectedKeyTable
  readonly passphrase: PassphraseTable
  readonly proposal: ProposalTable
}

export interface EntryTable {
  readonly seq: number; readonly kind: string; readonly at: string; readonly by: string
  /** Canonical JSON. */
  readonly body: string
  readonly previous: string; readonly hash: string
  /** Canonical JSON; null in entries of the first schema. */
  readonly origin: string | null
}

export interface DocumentTable { readonly seq: number; readonly sha256: string; readonly bytes: Uint8Array }

export interface TicketTable {
  readonly n: number; readonly number: string; readonly seq: number
  readonly kind: string; readonly tank: string; readonly product: string; readonly product_name: string
  readonly from_party: string; readonly to_party: string
  readonly opened_at: string; readonly closed_at: string; readonly issued_at: string
  /** Sorts in time, whatever the decimals of the seconds. */
  readonly closed_order: string
  readonly gsv: string; readonly gsv_unit: string; readonly nsv: string; readonly nsv_unit: string; readonly weight: string; readonly weight_unit: string
  readonly voided_seq: number | null; readonly voided_at: string | null; readonly void_reason: string | null
  readonly replaces: string | null; readonly replaced_by: string | null
  /** What a search looks through, lower case. */
  readonly words: string
}

/** A word of a ticket, by whose beginning it is found. */
export interface TicketWordTable { readonly id: number; readonly seq: number; readonly word: string }

export interface MovementTable {
  /** seq × 100 + leg: a stock movement has several. */
  readonly id: number
  readonly seq: number; readonly kind: string; readonly number: string
  /** `tank` or `line`; `tank` names either. */
  readonly place: string; readonly tank: string; readonly product: string
  readonly opened_at: string; readonly closed_at: string; readonly opened_order: string; readonly closed_order: string
  /** Whole seconds, no fewer than lie between the gauges. */
  readonly lasted: number
  /** When it counts in the book: the closing gauge, or later for what concerns a closed period. */
  readonly booked_at: string; readonly booked_order: string
  readonly opening_nsv: string; readonly closing_nsv: string; readonly change: string; readonly unit: string
  readonly voided_seq: number | null
  /** Name of the closed period that a late movement concerns, the entry it corrects, and the entry that took this one back later. */
  readonly concerns: string | null; readonly corrects: number | null; readonly corrected_by: number | null
}

export interface MeasurementTable {
  readonly seq: number; readonly tank: string; readonly product: string
  readonly at: string; readonly at_order: string; readonly nsv: string; readonly unit: string
}

/** A party's share of a booked movement, or of a change of owner in place. */
export interface AllocationTable {
  /** seq × 100 + share. */
  readonly id: number
  readonly seq: number; readonly of_seq: number | null; readonly tank: string; readonly product: string; readonly party: string
  readonly at: string; readonly at_order: string; readonly nsv: string; readonly unit: string
}

export interface PeriodTable {
  readonly seq: number; readonly name: string; readonly from_at: string; readonly to_at: string; readonly from_order: string; readonly to_order: string
  readonly closed_seq: number | null
}

/** Who did what, when, from which station; one row for every entry. */
export interface TrailTable {
  readonly seq: number; readonly kind: string; readonly at_order: string; readonly by: string; readonly person: string | null; readonly station: string | null
  /** Code of the tank, ticket, product, party, person or period it is about. */
  readonly subject: string
}

/** What an entry is about besides its subject: the tank of a ticket, the other tanks of a stock movement. */
export interface TrailAboutTable { readonly id: number; readonly seq: number; readonly subject: string }

/** The alarm, or the fault, of one gauge: it stands while it was raised after it was last cleared. */
export interface AlarmTable {
  /** The first event of it. */
  readonly seq: number; readonly tank: string; readonly gauge: string; readonly kind: string
  readonly raised_seq: number | null; readonly raised_order: string | null; readonly cleared_seq: number | null; readonly cleared_order: string | null
}

export interface PassphraseTable { readonly person: string; readonly verifier: string }

export interface ProposalTable {
  readonly id: string; readonly operation: string; readonly input: string; readonly prepared_by: string; readonly prepared_at: string; readonly note: string
}

export interface DraftTable { readonly id: string; readonly kind: string; readonly title: string; readonly body: string; readonly saved_at: string }

export interface ProtectedKeyTable { readonly identity: string; readonly key: string }
