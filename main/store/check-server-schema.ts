import { sql, type Kysely } from 'kysely'
import { randomBytes } from 'node:crypto'
import type { ServerConnection } from './connection.ts'
import { migrations } from './migrations/index.ts'
import type { Schema } from './schema.ts'
import { codeOf } from './server-fault.ts'

/**
 * Tables, indexes, guards and their functions are those that the migrations make: they are made once more beside the
 * ledger, described by the server in the same words, compared, and taken back.
 */
export async function checkServerSchema({ db }: ServerConnection, differs: (where: string, what: string) => void): Promise<void> {
  const scratch = `check_${randomBytes(6).toString('hex')}`
  const beside = await db.startTransaction().setIsolationLevel('repeatable read').execute()
  try {
    const { rows: [{ schema } = { schema: '' }] } = await sql<{ schema: string }>`select current_schema() as schema`.execute(beside)
    const stands = await schemaOf(beside, schema)
    await sql`create schema ${sql.id(scratch)}`.execute(beside)
    await sql`select set_config('search_path', ${scratch}, true)`.execute(beside)
    for (const step of Object.values(await migrations.getMigrations())) await step.up(beside)
    compare(stands, await schemaOf(beside, scratch), differs)
  } catch (error) {
    if (!(error instanceof Error) || codeOf(error.cause) !== '42501') throw error
    differs('the schema', 'it cannot be compared: the role may not make a schema beside it; grant it create on the database')
  } finally {
    await beside.rollback().execute()
  }
}

function compare(stands: ReadonlyMap<string, string>, expected: ReadonlyMap<string, string>, differs: (where: string, what: string) => void): void {
  for (const [name, made] of expected) {
    const found = stands.get(name)
    if (found === undefined) differs(name, 'it is missing')
    else if (found !== made) differs(name, `it is not as it was made: ${found}`)
  }
  for (const name of stands.keys()) if (!expected.has(name)) differs(name, 'this program did not make it')
}

/** Everything in a schema, by kind and name, in the server's own words; Kysely's list of migrations left out. */
async function schemaOf(db: Kysely<Schema>, schema: string): Promise<ReadonlyMap<string, string>> {
  const { rows } = await sql<{ kind: string; name: string; made: string }>`
    with things as (select oid, relname, relkind, relpersistence, relrowsecurity, relforcerowsecurity from pg_class
      where relnamespace = (select oid from pg_namespace where nspname = ${schema}) and relname not like 'kysely\\_%')
    select 'table' as kind, relname as name, concat_ws(' ', relkind, relpersistence, relrowsecurity, relforcerowsecurity,
        (select string_agg(concat_ws(' ', attname, format_type(atttypid, atttypmod), collname, attnotnull, attidentity, attgenerated, pg_get_expr(adbin, adrelid)), ', ' order by attnum)
          from pg_attribute left join pg_collation on pg_collation.oid = attcollation left join pg_attrdef on adrelid = attrelid and adnum = attnum
          where attrelid = things.oid and attnum > 0 and not attisdropped)) as made
      from things where relkind not in ('i', 'I')
    union all select 'constraint', relname || '.' || conname, concat_ws(' ', pg_get_constraintdef(pg_constraint.oid), convalidated, condeferrable)
      from pg_constraint join things on things.oid = conrelid
    union all select 'index', relname, concat_ws(' ', pg_get_indexdef(things.oid), indisvalid, indisready) from things join pg_index on indexrelid = things.oid
    union all select 'trigger', tgname, concat_ws(' ', pg_get_triggerdef(pg_trigger.oid), tgenabled) from pg_trigger join things on things.oid = tgrelid where not tgisinternal
    union all select 'rule', rulename, pg_get_ruledef(pg_rewrite.oid) from pg_rewrite join things on things.oid = ev_class where rulename <> '_RETURN'
    union all select 'policy', polname, concat_ws(' ', relname, polcmd, pg_get_expr(polqual, polrelid)) from pg_policy join things on things.oid = polrelid
    union all select 'function', proname, concat_ws(' ', lanname, prosecdef, provolatile, proconfig::text, prosrc)
      from pg_proc join pg_language on pg_language.oid = prolang where pronamespace = (select oid from pg_namespace where nspname = ${schema})`.execute(db)
  return new Map(rows.map(({ kind, name, made }) => [`${kind} ${name}`, made.replaceAll(`${schema}.`, '')]))
}
