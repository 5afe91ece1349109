import type { Kysely } from 'kysely'
import type { DatabaseSync } from 'node:sqlite'
import type { Schema } from './schema.ts'
import type { ServerPlace } from './server-place.ts'

/** A ledger in a file of its own. */
export interface FileConnection {
  readonly flavour: 'sqlite'
  readonly path: string
  readonly raw: DatabaseSync
  readonly db: Kysely<Schema>
}

/** A ledger on a PostgreSQL server. */
export interface ServerConnection {
  readonly flavour: 'postgres'
  /** host:port/database. */
  readonly path: string
  readonly place: ServerPlace
  /** Version of the server, as it says it. */
  readonly version: string
  readonly db: Kysely<Schema>
}

/** An open ledger, wherever it is kept. */
export type Connection = FileConnection | ServerConnection
