import { Kysely, PostgresDialect, type PostgresCursor, type PostgresPool, type PostgresPoolClient, type PostgresQueryResult } from 'kysely'
import { Pool, TypeOverrides, types, type PoolClient } from 'pg'
import type { Schema } from './schema.ts'
import { inServerWords, isAway } from './server-fault.ts'
import type { ServerPlace } from './server-place.ts'

/** Connections of one desk at most: a server's usual limit of 100 serves 20 desks. */
const MOST_CONNECTIONS = 4
const CONNECT_MS = 5_000
const STATEMENT_MS = 60_000
/** A little longer than the server's own limit, for a server that has gone without a word. */
const SILENCE_MS = 65_000
const IDLE_MS = 30_000

/** A pool of connections to a server, as Kysely knows databases. Nothing is connected before the first query. */
export function openPool(place: ServerPlace, waitMs: number): Kysely<Schema> {
  const pool = new Pool({
    host: place.host, port: place.port, database: place.database, ssl: place.tls,
    ...(place.user === undefined ? {} : { user: place.user }), ...(place.password === undefined ? {} : { password: place.password }),
    application_name: 'dipledger', options: settings(waitMs), types: readTypes(),
    max: MOST_CONNECTIONS, idleTimeoutMillis: IDLE_MS, connectionTimeoutMillis: CONNECT_MS, query_timeout: SILENCE_MS, keepAlive: true,
  })
  // a connection that is lost while nobody uses it is replaced when it is needed
  pool.on('error', () => undefined)
  return new Kysely<Schema>({ dialect: new PostgresDialect({ pool: forKysely(pool, place.shown) }) })
}

/**
 * What holds for every connection: a commit that is answered is on the server's disk; a desk that vanished is noticed
 * within a minute, so that what it held is free again.
 * @see https://www.postgresql.org/docs/15/runtime-config.html
 */
function settings(waitMs: number): string {
  const values = {
    synchronous_commit: 'on', statement_timeout: STATEMENT_MS, lock_timeout: waitMs, idle_in_transaction_session_timeout: STATEMENT_MS,
    tcp_keepalives_idle: 20, tcp_keepalives_interval: 5, tcp_keepalives_count: 3, client_min_messages: 'warning', standard_conforming_strings: 'on',
  }
  return Object.entries(values).map(([name, value]) => `-c ${name}=${value}`).join(' ')
}

/** Numbers come as numbers and bytes as bytes, as from SQLite. */
function readTypes(): TypeOverrides {
  const overrides = new TypeOverrides()
  overrides.setTypeParser(types.builtins.INT8, safeNumber)
  overrides.setTypeParser(types.builtins.BYTEA, (text) => new Uint8Array(Buffer.from(text.slice(2), 'hex')))
  return overrides
}

function safeNumber(text: string): number {
  const value = Number(text)
  if (!Number.isSafeInteger(value)) throw new Error(`${text} is no number that can be counted with`)
  return value
}

function forKysely(pool: Pool, place: string): PostgresPool {
  return {
    options: {},
    connect: async () => {
      try {
        return clientForKysely(await pool.connect(), place)
      } catch (error) {
        throw inServerWords(place, error)
      }
    },
    end: () => pool.end(),
  }
}

const COMMANDS = ['INSERT', 'UPDATE', 'DELETE', 'MERGE', 'COMMIT', 'ROLLBACK'] as const

/** A connection whose errors are in words, and which goes back to the pool only as long as it is sound. */
function clientForKysely(client: PoolClient, place: string): PostgresPoolClient {
  let lost = false
  // it is told by the next query; without a listener it would end the program
  const ignore = (): void => { lost = true }
  client.on('error', ignore)
  async function answer<R>(text: string, values: readonly unknown[]): Promise<PostgresQueryResult<R>> {
    // a lost connection has already ended the transaction; the error that did it must be heard, not this one
    if (lost && text === 'rollback') return { command: 'ROLLBACK', rowCount: 0, rows: [] }
    try {
      const { command, rowCount, rows } = await client.query(text, [...values])
      return { command: COMMANDS.find((known) => known === command) ?? 'SELECT', rowCount: rowCount ?? 0, rows }
    } catch (error) {
      const inWords = inServerWords(place, error)
      lost ||= isAway(inWords)
      throw inWords
    }
  }
  // one after another: the driver takes one question at a time
  let last: Promise<unknown> = Promise.resolve()
  function inTurn<R>(text: string, values: readonly unknown[]): Promise<PostgresQueryResult<R>> {
    const answered = last.then(() => answer<R>(text, values))
    last = answered.catch(() => undefined)
    return answered
  }
  function ask<R>(text: string, values: readonly unknown[]): Promise<PostgresQueryResult<R>>
  function ask<R>(cursor: PostgresCursor<R>): PostgresCursor<R>
  function ask<R>(text: string | PostgresCursor<R>, values: readonly unknown[] = []): Promise<PostgresQueryResult<R>> | PostgresCursor<R> {
    return typeof text === 'string' ? inTurn<R>(text, values) : text
  }
  return { query: ask, release: (destroy) => { client.off('error', ignore); client.release(lost || destroy === true) } }
}
