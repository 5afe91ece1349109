import { sql, type Kysely } from 'kysely'
import type { Checking } from './checking.ts'
import type { Schema } from './schema.ts'

interface Made { readonly type: string; readonly name: string; readonly sql: string | null }

/** Tables, indexes and the triggers that refuse changes are those that the migrations make, word for word. */
export async function checkSchema({ file, again, differs }: Checking): Promise<void> {
  const stands = await schemaOf(file)
  const expected = await schemaOf(again)
  for (const [name, made] of expected) {
    const found = stands.get(name)
    if (found === undefined) differs(name, 'it is missing')
    else if (found !== made) differs(name, `it is not as it was made: ${found}`)
  }
  for (const name of stands.keys()) if (!expected.has(name)) differs(name, 'this program did not make it')
}

async function schemaOf(db: Kysely<Schema>): Promise<ReadonlyMap<string, string>> {
  const { rows } = await sql<Made>`select type, name, sql from sqlite_schema where not (type = 'table' and name glob 'sqlite_stat[134]')`.execute(db)
  return new Map(rows.map((row) => [`${row.type} ${row.name}`, row.sql ?? '']))
}
