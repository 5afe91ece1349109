/** Migrations by date, each a step that is never changed once a ledger was made with it. */
import type { Kysely } from 'kysely'
import type { Migration, MigrationProvider } from 'kysely/migration'
import { entriesBetween } from '../entry-rows.ts'
import { rebuildProjections } from '../projections.ts'
import type { Schema } from '../schema.ts'
import { firstLedger } from './2026-11-25-first-ledger.ts'
import { evidence } from './2026-11-26-evidence.ts'

const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '2026-11-25-first-ledger': firstLedger,
  '2026-11-26-evidence': evidence,
}

/** The steps of this program, in their order. */
export const MIGRATION_NAMES: readonly string[] = Object.keys(MIGRATIONS).toSorted()

/** The last step makes the projections again from the entries, so that no step needs to know what an older one held. */
export const migrations: MigrationProvider = {
  getMigrations: () => {
    const last = MIGRATION_NAMES.at(-1)
    return Promise.resolve(Object.fromEntries(Object.entries(MIGRATIONS).map(([name, step]) => [name, name === last ? thenRebuild(step) : step])))
  },
}

function thenRebuild(step: Migration): Migration {
  return {
    async up(db: Kysely<Schema>): Promise<void> {
      await step.up(db)
      await rebuildProjections(db, entriesBetween(db, 1, Number.MAX_SAFE_INTEGER))
    },
  }
}
