import { describe, expect, it } from 'vitest'
import { portable } from '../../../main/store/migrations/flavour.ts'

describe('a statement of a migration', () => {
  it.each([
    'create table entry (seq integer primary key, bytes blob not null) strict', 'alter table entry add column origin text', 'drop table ticket', 'create index entry_by_kind on entry (kind, seq)',
  ])('is for SQLite what it says: %s', (text) => { expect(portable('sqlite', text)).toEqual([text]) })

  it('gets PostgreSQL’s types, and text that is ordered byte by byte', () => {
    expect(portable('postgres', "create table entry (\n  seq integer primary key check (seq > 0), body text not null check (length(body) > 0), bytes blob\n) strict"))
      .toEqual(['create table entry (\n  seq bigint primary key check (seq > 0), body text collate "C" not null check (length(body) > 0), bytes bytea\n)'])
    expect(portable('postgres', 'alter table entry add column origin text')).toEqual(['alter table entry add column origin text collate "C"'])
    expect(portable('postgres', 'drop table ticket')).toEqual(['drop table ticket'])
  })

  it('that guards is a function and its trigger, with the same words; what is not deleted is not emptied either', () => {
    expect(portable('postgres', "create trigger follows before insert on entry\n    when new.seq <> (select max(seq) + 1 from entry)\n    begin select raise(abort, 'it''s taken'); end")).toEqual([
      "create function follows() returns trigger language plpgsql as $guard$ begin if new.seq <> (select max(seq) + 1 from entry) then raise exception using message = 'it''s taken', errcode = 'P0001'; end if; return new; end $guard$",
      'create trigger follows before insert on entry for each row execute function follows()',
    ])
    expect(portable('postgres', "create trigger stays before delete on entry begin select raise(abort, 'no'); end").at(-1)).toBe('create trigger stays_at_once before truncate on entry for each statement execute function stays()')
    expect(portable('postgres', 'drop trigger stays')).toEqual(['drop function if exists stays() cascade'])
  })

  it('that nobody can put into PostgreSQL’s words is not run at all', () => {
    expect(() => portable('postgres', 'create trigger t after insert on entry begin update entry set seq = 1; end')).toThrow('A guard must have the form')
  })
})
