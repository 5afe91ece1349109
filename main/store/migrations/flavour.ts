import { PostgresAdapter, sql, type Kysely } from 'kysely'

/** The databases that a ledger can be kept in. */
export type Flavour = 'sqlite' | 'postgres'

/** Which database a connection or a transaction speaks to. */
export function flavourOf(db: Pick<Kysely<never>, 'getExecutor'>): Flavour {
  return db.getExecutor().adapter instanceof PostgresAdapter ? 'postgres' : 'sqlite'
}

/** Runs statements written for SQLite one after another, in the words of whichever database stands behind `db`. */
export async function run(db: Kysely<unknown>, statements: readonly string[]): Promise<void> {
  const flavour = flavourOf(db)
  for (const statement of statements) {
    for (const text of portable(flavour, statement)) await sql.raw(text).execute(db)
  }
}

/**
 * A statement of a migration in the words of a database. Migrations are written for SQLite and run there to the letter;
 * PostgreSQL gets its own names of types, text that is ordered byte by byte as in SQLite, and guards as functions.
 */
export function portable(flavour: Flavour, sqliteText: string): readonly string[] {
  if (flavour === 'sqlite') return [sqliteText]
  if (/^\s*create\s+trigger\b/i.test(sqliteText)) return guardOf(sqliteText)
  if (/^\s*drop\s+trigger\b/i.test(sqliteText)) return dropGuard(sqliteText)
  if (/^\s*(create|alter)\s+table\b/i.test(sqliteText)) return [tableOf(sqliteText)]
  return [sqliteText]
}

function tableOf(text: string): string {
  return text.replace(/\)\s*strict\s*$/i, ')').replace(/\binteger\b/gi, 'bigint').replace(/\bblob\b/gi, 'bytea').replace(/\btext\b/gi, 'text collate "C"')
}

const GUARD = /^\s*create\s+trigger\s+(\w+)\s+before\s+(insert|update|delete)\s+on\s+(\w+)\s+(?:when\s+([\s\S]+?)\s+)?begin\s+select\s+raise\s*\(\s*abort\s*,\s*('(?:[^']|'')*')\s*\)\s*;\s*end\s*;?\s*$/i

/** A guard refuses what it stands before, or lets it pass; where nothing is deleted, nothing is emptied at once either. */
function guardOf(text: string): readonly string[] {
  const [, name, event = '', table, condition, message] = GUARD.exec(text) ?? []
  if (name === undefined) throw new Error(`A guard must have the form “create trigger … before … on … [when …] begin select raise(abort, '…'); end”: ${text}`)
  const refusal = `raise exception using message = ${message}, errcode = '${REFUSED_BY_GUARD}';`
  const body = condition === undefined ? refusal : `if ${condition} then ${refusal} end if; return new;`
  const made = [
    `create function ${name}() returns trigger language plpgsql as $guard$ begin ${body} end $guard$`,
    `create trigger ${name} before ${event} on ${table} for each row execute function ${name}()`,
  ]
  return event.toLowerCase() === 'delete' ? [...made, `create trigger ${name}_at_once before truncate on ${table} for each statement execute function ${name}()`] : made
}

/** The function of a guard goes with every trigger that calls it. */
function dropGuard(text: string): readonly string[] {
  const [, name] = /^\s*drop\s+trigger\s+(?:if\s+exists\s+)?(\w+)\s*;?\s*$/i.exec(text) ?? []
  if (name === undefined) throw new Error(`A guard is dropped by its name alone: ${text}`)
  return [`drop function if exists ${name}() cascade`]
}

/** What PostgreSQL gives as the code of an error that a guard raised. @see https://www.postgresql.org/docs/15/errcodes-appendix.html class P0 */
export const REFUSED_BY_GUARD = 'P0001'
