import type { Kysely, SqliteDatabase } from 'kysely'
import type { DatabaseSync } from 'node:sqlite'
import type { Turn } from './turn.ts'
import type { Schema } from './schema.ts'

/** A ledger in a file of its own. */
export interface FileConnection {
  readonly flavour: 'sqlite'
  readonly path: string
  readonly raw: DatabaseSync
  /** The same as Kysely uses it, with its prepared statements. */
  readonly statements: SqliteDatabase
  /** Its queries wait until nobody posts. */
  readonly db: Kysely<Schema>
  /** Taken by whoever uses the one connection. */
  readonly turn: Turn
  /** The same connection for whoever has the turn. */
  readonly held: Kysely<Schema>
}

/** A ledger on a PostgreSQL server. */
export interface ServerConnection {
  readonly flavour: 'postgres'
  /** host:port/database. */
  readonly path: string
  /** How long to wait for others, and for the server to come back when it broke off in the middle of a commit [ms]. */
  readonly waitMs: number
  /** Version of the server, as it says it. */
  readonly version: string
  readonly db: Kysely<Schema>
}

/** An open ledger, wherever it is kept. */
export type Connection = FileConnection | ServerConnection
