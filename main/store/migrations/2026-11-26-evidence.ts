import type { Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'
import { run } from './flavour.ts'

/** Only projections are dropped here: they are made again from the entries. */
const DROPPED = ['drop table measurement', 'drop table movement', 'drop table ticket']

const CHAIN = ['alter table entry add column origin text']

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
    id integer primary key, seq integer not null references entry (seq), kind text not null, number text not null,
    place text not null, tank text not null, product text not null,
    opened_at text not null, closed_at text not null, opened_order text not null, closed_order text not null,
    lasted integer not null, booked_at text not null, booked_order text not null,
    opening_nsv text not null, closing_nsv text not null, change text not null, unit text not null,
    voided_seq integer references entry (seq), concerns text, corrects integer, corrected_by integer
  ) strict`,
  'create index movement_by_entry on movement (seq)',
  'create index movement_by_time on movement (booked_order)',
  "create index movement_by_tank on movement (tank, closed_order) where opening_nsv <> ''",
  'create index movement_by_tank_booked on movement (tank, booked_order)',
  'create index movement_by_period on movement (concerns)',
  "create index movement_by_opening on movement (tank, opened_order) where opening_nsv <> ''",
  "create index movement_by_length on movement (tank, lasted) where opening_nsv <> ''",
  `create table measurement (
    seq integer primary key references entry (seq), tank text not null, product text not null,
    at text not null, at_order text not null, nsv text not null, unit text not null
  ) strict`,
  'create index measurement_by_time on measurement (at_order)',
  'create index measurement_by_tank on measurement (tank, at_order)',
  `create table allocation (
    id integer primary key, seq integer not null references entry (seq), of_seq integer references entry (seq),
    tank text not null, product text not null, party text not null, at text not null, at_order text not null,
    nsv text not null, unit text not null
  ) strict`,
  'create index allocation_by_time on allocation (at_order)',
  'create index allocation_of on allocation (of_seq)',
  `create table period (
    seq integer primary key references entry (seq), name text not null unique,
    from_at text not null, to_at text not null, from_order text not null, to_order text not null,
    closed_seq integer references entry (seq)
  ) strict`,
  'create index period_by_end on period (to_order)',
  `create table trail (
    seq integer primary key references entry (seq), kind text not null, at_order text not null, by text not null,
    person text, station text, subject text not null
  ) strict`,
  'create index trail_by_time on trail (at_order)',
  'create index trail_by_subject on trail (subject, seq)',
  'create table trail_about (id integer primary key, seq integer not null references entry (seq), subject text not null) strict',
  'create index trail_about_subject on trail_about (subject, seq)',
  'create table ticket_word (id integer primary key, seq integer not null references entry (seq), word text not null) strict',
  'create index ticket_by_word on ticket_word (word, seq)',
  `create table alarm (
    seq integer primary key references entry (seq), tank text not null, gauge text not null, kind text not null,
    raised_seq integer, raised_order text, cleared_seq integer, cleared_order text, unique (tank, gauge, kind)
  ) strict`,
]

const SIDE_TABLES = [
  'create table passphrase (person text primary key not null, verifier text not null) strict',
  `create table proposal (
    id text primary key not null, operation text not null, input text not null, prepared_by text not null, prepared_at text not null, note text not null
  ) strict`,
]

/** Where entries came from; stock movements, owners' stock, periods and the audit trail as projections; passphrases and proposals. */
export const evidence: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await run(db, [...DROPPED, ...CHAIN, ...PROJECTIONS, ...SIDE_TABLES])
  },
}
