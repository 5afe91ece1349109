import { stat, statfs } from 'node:fs/promises'
import { dirname } from 'node:path'
import { sql } from 'kysely'
import type { Connection } from './connection.ts'

/** Room that is enough for any ledger's next months [bytes]; common practice, no source. */
const LEAST = 1e9
/** A ledger, its copy before a new version, and one more while either is made; common practice, no source. */
const COPIES = 3
/** Clocks of two machines that are kept by the network differ by far less [ms]; common practice, no source. */
const AGREES = 60_000

/** What a ledger stands on, besides itself. */
export interface Surroundings {
  /** Bytes free on the disk of a ledger file, and how many there should be; null where nobody can tell, and on a server, whose disk is its own affair. */
  readonly room: { readonly free: number; readonly advised: number; readonly enough: boolean } | null
  /** By how many milliseconds the clock of this machine is ahead of the server's; null in a file. */
  readonly clock: { readonly ahead: number; readonly agrees: boolean } | null
}

/** Looks at the disk of a ledger file, or at the clock of its server. */
export async function surroundingsOf(opened: Connection): Promise<Surroundings> {
  if (opened.flavour === 'sqlite') return { room: await roomAt(opened.path), clock: null }
  const sent = Date.now()
  const { rows: [row] } = await sql<{ ms: string }>`select (extract(epoch from clock_timestamp()) * 1000)::bigint::text as ms`.execute(opened.db)
  return { room: null, clock: clockBeside(Number(row?.ms), sent, Date.now()) }
}

async function roomAt(path: string): Promise<Surroundings['room']> {
  try {
    const [{ bavail, bsize }, { size }] = await Promise.all([statfs(dirname(path)), stat(path)])
    return roomFor(size, bavail * bsize)
  } catch {
    // some disks of a network say nothing of their room
    return null
  }
}

/** Whether there is room beside a ledger of so many bytes. */
export function roomFor(size: number, free: number): NonNullable<Surroundings['room']> {
  const advised = Math.max(LEAST, COPIES * size)
  return { free, advised, enough: free >= advised }
}

/** The clock of this machine beside another that was read between two instants of this one [ms]. */
export function clockBeside(other: number, sent: number, answered: number): NonNullable<Surroundings['clock']> {
  const ahead = Math.trunc((sent + answered) / 2 - other)
  return { ahead, agrees: Math.abs(ahead) <= AGREES + (answered - sent) / 2 }
}
