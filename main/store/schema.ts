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
  // side tables: no evidence, may change
  readonly draft: DraftTable
  readonly protected_key: ProtectedKeyTable
}

export interface EntryTable {
  readonly seq: number; readonly kind: string; readonly at: string; readonly by: string
  /** Canonical JSON. */
  readonly body: string
  readonly previous: string; readonly hash: string
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

export interface MovementTable {
  readonly seq: number; readonly kind: string; readonly number: string; readonly tank: string; readonly product: string
  readonly opened_at: string; readonly closed_at: string; readonly opened_order: string; readonly closed_order: string
  readonly opening_nsv: string; readonly closing_nsv: string; readonly change: string; readonly unit: string
  readonly voided_seq: number | null
}

export interface MeasurementTable {
  readonly seq: number; readonly tank: string; readonly product: string
  readonly at: string; readonly at_order: string; readonly nsv: string; readonly unit: string
}

export interface DraftTable { readonly id: string; readonly kind: string; readonly title: string; readonly body: string; readonly saved_at: string }

export interface ProtectedKeyTable { readonly identity: string; readonly key: string }
