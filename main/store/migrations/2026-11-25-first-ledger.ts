import type { Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'
import { run } from './flavour.ts'

const CHAIN = [
  `create table entry (
    seq integer primary key check (seq > 0),
    kind text not null, at text not null, by text not null, body text not null,
    previous text not null check (length(previous) = 64),
    hash text not null unique check (length(hash) = 64)
  ) strict`,
  'create index entry_by_kind on entry (kind, seq)',
  `create trigger entry_follows_the_last before insert on entry
    when new.seq <> (select coalesce(max(seq), 0) + 1 from entry)
    begin select raise(abort, 'an entry takes the number after the last'); end`,
  `create trigger entry_is_never_updated before update on entry
    begin select raise(abort, 'entries are never updated; a mistake is mended by a later entry'); end`,
  `create trigger entry_is_never_deleted before delete on entry
    begin select raise(abort, 'entries are never deleted; a mistake is mended by a later entry'); end`,
  `create table document (
    seq integer primary key references entry (seq),
    sha256 text not null unique check (length(sha256) = 64),
    bytes blob not null
  ) strict`,
  `create trigger document_is_never_replaced before insert on document
    when exists (select 1 from document where seq = new.seq or sha256 = new.sha256)
    begin select raise(abort, 'signed documents are never replaced'); end`,
  `create trigger document_is_never_updated before update on document
    begin select raise(abort, 'signed documents are never updated'); end`,
  `create trigger document_is_never_deleted before delete on document
    begin select raise(abort, 'signed documents are never deleted'); end`,
]

const PROJECTIONS = [
  `create table ticket (
    n integer primary key, number text not null unique, seq integer not null unique references entry (seq),
    kind text not null, tank text not null, product text not null, product_name text not null,
    from_party text not null, to_party text not null,
    opened_at text not null, closed_at text not null, issued_at text not null, closed_order text not null,
    gsv text not null, gsv_unit text not null, nsv text not null, nsv_unit text not null, weight text not null, weight_unit text not null,
    voided_seq integer references entry (seq), voided_at text, void_reason text,
    replaces text, replaced_by text, words text not null
  ) strict`,
  'create index ticket_by_time on ticket (closed_order)',
  'create index ticket_by_tank on ticket (tank, closed_order)',
  'create index ticket_by_product on ticket (product, closed_order)',
  `create table movement (
    seq integer primary key references entry (seq), kind text not null, number text not null, tank text not null, product text not null,
    opened_at text not null, closed_at text not null, opened_order text not null, closed_order text not null,
    opening_nsv text not null, closing_nsv text not null, change text not null, unit text not null,
    voided_seq integer references entry (seq)
  ) strict`,
  'create index movement_by_time on movement (closed_order)',
  'create index movement_by_tank on movement (tank, closed_order)',
  `create table measurement (
    seq integer primary key references entry (seq), tank text not null, product text not null,
    at text not null, at_order text not null, nsv text not null, unit text not null
  ) strict`,
  'create index measurement_by_time on measurement (at_order)',
  'create index measurement_by_tank on measurement (tank, at_order)',
]

const SIDE_TABLES = [
  `create table draft (
    id text primary key not null, kind text not null, title text not null, body text not null, saved_at text not null
  ) strict`,
  'create table protected_key (identity text primary key not null, key text not null) strict',
]

/** The chain with its documents, the projections, and the side tables. */
export const firstLedger: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await run(db, [...CHAIN, ...PROJECTIONS, ...SIDE_TABLES])
  },
}
