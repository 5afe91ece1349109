/** Migrations by date, each a step that is never changed once a ledger was made with it. */
import type { Migration, MigrationProvider } from 'kysely/migration'
import { firstLedger } from './2026-11-25-first-ledger.ts'

const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '2026-11-25-first-ledger': firstLedger,
}

export const migrations: MigrationProvider = { getMigrations: () => Promise.resolve({ ...MIGRATIONS }) }
