import { Kysely, SqliteAdapter, SqliteDialect, SqliteDriver, type DatabaseConnection, type DialectAdapter, type Driver, type SqliteDatabase, type SqliteStatement } from 'kysely'
import type { DatabaseSync, SQLInputValue } from 'node:sqlite'
import type { FileConnection } from './connection.ts'
import { LedgerFileFault, withFile } from './file-fault.ts'
import { runAtHand } from './fixed-query.ts'
import type { Schema } from './schema.ts'
import { Turn } from './turn.ts'

/** Marks a file as a ledger of this program: `DIPL`. */
export const APPLICATION_ID = 0x4449504c

/** So many prepared statements are kept; posting and the views need fewer. */
const KEPT = 200

/** SQLite comes with Node; some builds of Node or Electron leave it out, so this is asked before anything else. */
export function sqlite(): typeof import('node:sqlite') {
  const found: typeof import('node:sqlite') | undefined = process.getBuiltinModule('node:sqlite')
  if (found === undefined) {
    throw new Error(`This Node (${process.version}) has no node:sqlite, which the ledger is kept in. Start the program by its npm scripts, which bring Node 24.`)
  }
  return found
}

/** Opens a file to read and write: each transaction takes the write lock first and is on disk when it returns. */
export function openToWrite(path: string, waitMs: number): FileConnection {
  return withFile(path, () => {
    const raw = new (sqlite().DatabaseSync)(path, { timeout: waitMs })
    try {
      raw.exec('pragma journal_mode = wal; pragma synchronous = full; pragma foreign_keys = on; pragma recursive_triggers = on; pragma trusted_schema = off; pragma cell_size_check = on')
      demand(raw, path, 'journal_mode', 'wal')
      demand(raw, path, 'synchronous', 2)
      demand(raw, path, 'foreign_keys', 1)
    } catch (error) {
      raw.close()
      throw error
    }
    return connection(path, raw, 'begin immediate')
  })
}

/** Held of a scratch database in memory [KiB]; what is more goes to a file of the system's that has no name. */
const SCRATCH_CACHE = 256 * 1024

/** A database for as long as the connection lives. Beyond its cache it takes no more memory, however much is put into it. */
export function openScratch(): FileConnection {
  const raw = new (sqlite().DatabaseSync)('')
  raw.exec(`pragma journal_mode = memory; pragma synchronous = off; pragma temp_store = file; pragma cache_size = -${SCRATCH_CACHE}; pragma trusted_schema = off`)
  return connection('', raw, 'begin')
}

/** Opens a file to read only; a transaction sees the file as it stood at its first query. */
export function openToRead(path: string, waitMs: number): FileConnection {
  return withFile(path, () => {
    const raw = new (sqlite().DatabaseSync)(path, { timeout: waitMs, readOnly: true })
    raw.exec('pragma trusted_schema = off; pragma cell_size_check = on')
    return connection(path, raw, 'begin')
  })
}

/** The value of a pragma. */
export function pragma(raw: DatabaseSync, name: string): unknown {
  return Object.values(raw.prepare(`pragma ${name}`).get() ?? {})[0]
}

function demand(raw: DatabaseSync, path: string, name: string, wanted: string | number): void {
  const stands = pragma(raw, name)
  if (stands !== wanted) throw new LedgerFileFault(path, `The ledger ${path} cannot be written safely: ${name} is ${String(stands)}, not ${wanted}. Keep the ledger on a local disk.`)
}

function connection(path: string, raw: DatabaseSync, begin: 'begin' | 'begin immediate'): FileConnection {
  const statements = forKysely(path, raw, begin)
  const turn = new Turn()
  const held = new Kysely<Schema>({ dialect: new LedgerDialect(statements, undefined) })
  runAtHand(held, statements)
  return { flavour: 'sqlite', path, raw, statements, turn, held, db: new Kysely<Schema>({ dialect: new LedgerDialect(statements, turn) }) }
}

/** A node:sqlite database as Kysely's SQLite dialect expects it; a statement that was prepared once is kept for the next time. */
function forKysely(path: string, raw: DatabaseSync, begin: 'begin' | 'begin immediate'): SqliteDatabase {
  const prepared = new Map<string, SqliteStatement>()
  return {
    close: () => { raw.close() },
    prepare(text) {
      const known = prepared.get(text)
      if (known !== undefined) return known
      const statement = prepareStatement(path, raw, text === 'begin' ? begin : text)
      if (prepared.size >= KEPT) prepared.delete(prepared.keys().next().value ?? '')
      prepared.set(text, statement)
      return statement
    },
  }
}

function prepareStatement(path: string, raw: DatabaseSync, text: string): SqliteStatement {
  const statement = withFile(path, () => raw.prepare(text))
  return {
    reader: statement.columns().length > 0,
    all: (values) => withFile(path, () => statement.all(...values.map(asInput))),
    run: (values) => {
      // a full or failing disk has already ended the transaction; the error that did it must be heard, not this one
      if (text === 'rollback' && !raw.isTransaction) return { changes: 0, lastInsertRowid: 0 }
      return withFile(path, () => statement.run(...values.map(asInput)))
    },
    iterate: (values) => statement.iterate(...values.map(asInput)),
  }
}

function asInput(value: unknown): SQLInputValue {
  if (value === null || typeof value === 'number' || typeof value === 'bigint' || typeof value === 'string' || value instanceof Uint8Array) return value
  throw new Error(`A value of type ${typeof value} cannot be stored`)
}

/** SQLite with one connection, for which queries wait their turn, or none for whoever has it. */
class LedgerDialect extends SqliteDialect {
  readonly #database: SqliteDatabase
  readonly #turn: Turn | undefined

  constructor(database: SqliteDatabase, turn: Turn | undefined) {
    super({ database })
    this.#database = database
    this.#turn = turn
  }

  override createAdapter(): DialectAdapter {
    return new LedgerAdapter()
  }

  override createDriver(): Driver {
    return new LedgerDriver(this.#database, this.#turn)
  }
}

class LedgerAdapter extends SqliteAdapter {
  /** A migration is done whole or not at all. */
  override get supportsTransactionalDdl(): boolean {
    return true
  }

  /** The turn sees to it that the one connection is used by one at a time. */
  override get supportsMultipleConnections(): true {
    return true
  }
}

class LedgerDriver extends SqliteDriver {
  readonly #turn: Turn | undefined

  constructor(database: SqliteDatabase, turn: Turn | undefined) {
    super({ database })
    this.#turn = turn
  }

  override async acquireConnection(): Promise<DatabaseConnection> {
    await this.#turn?.take()
    return super.acquireConnection()
  }

  override async releaseConnection(): Promise<void> {
    this.#turn?.give()
  }
}
