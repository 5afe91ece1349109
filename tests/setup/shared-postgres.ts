import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { removeShared, SHARED_FOLDER } from '../support/postgres.ts'

/** Gives the run a folder for the one PostgreSQL server that its test files share, and stops that server in the end. */
export function setup(): () => void {
  const folder = mkdtempSync(join(tmpdir(), 'dipledger-postgres-'))
  process.env[SHARED_FOLDER] = folder
  return () => { removeShared(folder) }
}
