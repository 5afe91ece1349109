import { copyFileSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { z } from 'zod'

const FOLDER = join(import.meta.dirname, '../fixtures/ledgers')
const listSchema = z.object({
  schema: z.string(), head: z.string(),
  entries: z.array(z.object({ seq: z.number(), kind: z.string(), hash: z.string() })),
  tickets: z.array(z.object({ number: z.string(), nsv: z.object({ value: z.string(), unit: z.string() }), voided: z.number().nullable(), replacedBy: z.string().nullable() })),
})

/** A ledger as a released version of the program made it, and what was written down of it then. */
export interface OldLedger extends z.infer<typeof listSchema> {
  /** A copy at a path. */
  readonly copyTo: (path: string) => string
}

/** One ledger of every released schema. */
export const OLD_LEDGERS: readonly OldLedger[] = readdirSync(FOLDER).filter((name) => name.endsWith('.json')).map((name) => {
  const listed = listSchema.parse(JSON.parse(readFileSync(join(FOLDER, name), 'utf8')))
  return { ...listed, copyTo: (path) => { copyFileSync(join(FOLDER, `${listed.schema}.db`), path); return path } }
})

/** What a ledger file holds, asked without this program: its migrations, and number and hash of every entry. */
export function heldIn(path: string): { readonly migrations: readonly string[]; readonly hashes: readonly string[] } {
  const raw = new DatabaseSync(path, { readOnly: true })
  try {
    return {
      migrations: raw.prepare('select name from kysely_migration order by name').all().map((row) => String(row['name'])),
      hashes: raw.prepare('select hash from entry order by seq').all().map((row) => String(row['hash'])),
    }
  } finally {
    raw.close()
  }
}
