import { sql, type AliasedRawBuilder, type Kysely } from 'kysely'
import { z } from 'zod'
import type { Progress } from '../operations/contracts/index.ts'
import { LedgerFileFault } from './file-fault.ts'
import type { Schema } from './schema.ts'

/** A check under way: what is read, and where differences and progress go. */
export interface Checking {
  /** The file, in one transaction: as it stood at the first query. */
  readonly file: Kysely<Schema>
  /** A ledger in memory, in which the projections are made again. */
  readonly again: Kysely<Schema>
  differs(where: string, what: string): void
  /** Says how far the check is, lets others run, and stops it when it was cancelled. */
  step(progress: Progress): Promise<void>
}

/** Does one part of a check; a part of the file that cannot be read is a difference. */
export async function attempt({ differs }: Checking, where: string, part: () => Promise<void>): Promise<void> {
  try {
    await part()
  } catch (error) {
    if (!(error instanceof LedgerFileFault)) throw error
    differs(where, said(error))
  }
}

/** What an error says, on one line. */
export function said(error: unknown): string {
  const message = error instanceof z.ZodError ? z.prettifyError(error) : error instanceof Error ? error.message : String(error)
  return message.replace(/\s+/g, ' ').slice(0, 300)
}

/** A column's bytes as they stand in the file: text that was damaged must not be mended by reading it. */
export function bytesOf<C extends string>(column: C): AliasedRawBuilder<Uint8Array | null, C> {
  return sql<Uint8Array | null>`cast(${sql.ref(column)} as blob)`.as(column)
}

const UTF8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

/** The text of a column; undefined when its bytes are no text. */
export function textOf(bytes: Uint8Array | null): string | undefined {
  if (bytes === null) return undefined
  try {
    return UTF8.decode(bytes)
  } catch {
    return undefined
  }
}
