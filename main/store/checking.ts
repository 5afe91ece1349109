import { sql, type AliasedRawBuilder, type Kysely } from 'kysely'
import { z } from 'zod'
import type { Progress } from '../operations/contracts/index.ts'
import { LedgerFileFault } from './file-fault.ts'
import { flavourOf } from './migrations/flavour.ts'
import type { Recomputing } from './recomputing.ts'
import type { Schema } from './schema.ts'
import type { Recomputes } from './store.ts'
import { LedgerServerFault } from './server-fault.ts'

/** A check under way: what is read, and where differences and progress go. */
export interface Checking {
  /** What is checked, in one transaction: as it stood at the first query. */
  readonly file: Kysely<Schema>
  /** A ledger of its own, in which the projections are made again. */
  readonly again: Kysely<Schema>
  /** Makes computed entries again; null where only their form is looked at. */
  readonly recompute: Recomputing | null
  /** Makes the checks before a period is closed again; null where a seal's list is taken as it stands. */
  readonly closingChecks: Recomputes['closingChecks'] | null
  /** A difference, with the number of the entry that it concerns, where it concerns one. */
  differs(where: string, what: string, seq?: number): void
  /** Says how far the check is, lets others run, and stops it when it was cancelled. */
  step(progress: Progress): Promise<void>
}

/** Does one part of a check; a part of the file that cannot be read is a difference. */
export async function attempt({ differs }: Checking, where: string, part: () => Promise<void>): Promise<void> {
  try {
    await part()
  } catch (error) {
    if (!isDamage(error)) throw error
    differs(where, said(error))
  }
}

/** Whether an error says that what is stored cannot be read, and not that nobody can be reached who could read it. */
function isDamage(error: unknown): boolean {
  return error instanceof LedgerFileFault || (error instanceof LedgerServerFault && error.trouble === 'damaged')
}

/** What an error says, on one line. */
export function said(error: unknown): string {
  const message = error instanceof z.ZodError ? z.prettifyError(error) : error instanceof Error ? error.message : String(error)
  return message.replace(/\s+/g, ' ').slice(0, 300)
}

/** A column's bytes as they are stored: text that was damaged must not be mended by reading it. */
export function bytesIn(db: Kysely<Schema>): <C extends string>(column: C) => AliasedRawBuilder<Uint8Array | null, C> {
  const flavour = flavourOf(db)
  return (column) => (flavour === 'postgres'
    ? sql<Uint8Array | null>`convert_to(cast(${sql.ref(column)} as text), 'UTF8')`
    : sql<Uint8Array | null>`cast(${sql.ref(column)} as blob)`).as(column)
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
