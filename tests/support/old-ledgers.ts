import { copyFileSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { z } from 'zod'
import { sitDown } from '../../main/operations/desk/sit-down.ts'
import type { Flavour } from './places.ts'
import { SAMPLE_PASSPHRASE } from './sample-folder.ts'
import { aWorld, type World } from './world.ts'

/** Where they are kept: each as a file with nothing beside it, and what was written down of it in JSON. */
export const FOLDER = join(import.meta.dirname, '../fixtures/ledgers')
const listSchema = z.strictObject({
  schema: z.string(), head: z.string(),
  entries: z.array(z.strictObject({ seq: z.number(), kind: z.string(), hash: z.string() })),
  tickets: z.array(z.strictObject({ number: z.string(), nsv: z.strictObject({ value: z.string(), unit: z.string() }), voided: z.number().nullable(), replacedBy: z.string().nullable() })),
  /** Who may do whatever these tests do, with the passphrase of the samples, where people are on record. */
  administrator: z.string().optional(),
  /** The closing entry of each closed period, and the hash of its seal. */
  seals: z.array(z.strictObject({ period: z.string(), seq: z.number(), hash: z.string() })).default([]),
})

/** A ledger as a released version of the program made it, and what was written down of it then. */
export interface OldLedger extends z.infer<typeof listSchema> {
  /** A copy at a path. */
  readonly copyTo: (path: string) => string
  /** A copy in a world of its own in December 2026, with its administrator at the desk; no entry is made for that. */
  readonly world: (on?: Flavour) => Promise<World>
}

/** One ledger of every released schema, the oldest first. */
export const OLD_LEDGERS: readonly OldLedger[] = readdirSync(FOLDER).filter((name) => name.endsWith('.json')).toSorted().map((name) => {
  const listed = listSchema.parse(JSON.parse(readFileSync(join(FOLDER, name), 'utf8')))
  const file = join(FOLDER, `${listed.schema}.db`)
  return { ...listed, copyTo: (path) => { copyFileSync(file, path); return path }, world: (on = 'sqlite') => worldOf(file, listed.administrator, on) }
})

async function worldOf(file: string, administrator: string | undefined, on: Flavour): Promise<World> {
  const world = await aWorld({ copyOf: file, now: () => '2026-12-01T08:00:00Z', on })
  const refused = administrator === undefined ? undefined : await sitDown(world.context, administrator, SAMPLE_PASSPHRASE)
  if (refused !== undefined) throw new Error(JSON.stringify(refused))
  return world
}

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
