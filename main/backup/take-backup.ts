import { createHash } from 'node:crypto'
import { createReadStream, statSync } from 'node:fs'
import { join } from 'node:path'
import { Refused } from '../../core/refusal/index.ts'
import type { Progress, TakenBackup } from '../operations/contracts/index.ts'
import { checkLedgerFile, putInPlace, type LedgerStore } from '../store/index.ts'
import { backupName } from './names.ts'
import { addToRecord } from './record.ts'
import { beginFile, clearRemains, dropFile } from './unfinished.ts'
import { folderFault } from './places.ts'

/** Nobody else opens a file that is being made [ms]. */
const WAIT = 0

/** What taking a backup needs. */
export interface BackupWork {
  readonly store: LedgerStore
  readonly folder: string
  /** The instant now, RFC 3339 in UTC. */
  readonly now: () => string
  readonly progress: (step: Progress) => void
  readonly signal: AbortSignal
}

/**
 * Copies the ledger into a file of another name, checks all of it there, and only then gives it the name of a backup. A
 * backup that is interrupted leaves nothing that bears such a name; the next one clears what it left.
 */
export async function takeBackup({ store, folder, now, progress, signal }: BackupWork): Promise<TakenBackup> {
  const at = now()
  const began = performance.now()
  const making = begin(folder)
  try {
    await store.copyTo(making, progress, signal)
    const check = await checkLedgerFile(making, WAIT, progress, signal)
    if (!check.whole) throw notWhole(check.differences[0])
    const { head, entries, tickets } = check
    const name = backupName({ of: await terminalCode(store), at, seq: entries })
    const path = join(folder, name)
    progress({ done: 0, of: 0, what: 'writing to disk' })
    const { sha256, size } = await fingerprint(making)
    signal.throwIfAborted()
    if (!putInPlace(making, path)) throw new Refused([{ code: 'path-taken', path: 'backup', value: path, limit: 'a backup of this second is there already; try again', clause: 'HOUSE backup' }])
    addToRecord(folder, { name, whole: true, verifiedAt: now(), sha256, head, entries, tickets, first: await firstHash(store) })
    return { name, path, at, head, entries, tickets, size, sha256, seconds: secondsSince(began) }
  } catch (error) {
    throw folderFault(error, folder, 'folder')
  } finally {
    dropFile(making)
  }
}

/** Seconds since, in thousandths. */
export function secondsSince(began: number): number {
  return Math.floor(performance.now() - began) / 1000
}

/** SHA-256 and size of a file. */
export async function fingerprint(path: string): Promise<{ readonly sha256: string; readonly size: number }> {
  const hash = createHash('sha256')
  for await (const part of createReadStream(path)) hash.update(part)
  return { sha256: hash.digest('hex'), size: statSync(path).size }
}

/** Hash of the first entry: by it a ledger is told from others. */
export async function firstHash(store: Pick<LedgerStore, 'entry'>): Promise<string> {
  return (await store.entry(1))?.hash ?? ''
}

async function terminalCode(store: LedgerStore): Promise<string> {
  return (await store.entriesOfKind('terminal-set')).at(-1)?.body.terminal.code ?? 'ledger'
}

function begin(folder: string): string {
  try {
    clearRemains(folder)
    return beginFile(folder)
  } catch (error) {
    throw folderFault(error, folder, 'folder')
  }
}

function notWhole(first: { readonly where: string; readonly what: string } | undefined): Refused {
  return new Refused([{
    code: 'ledger-damaged', path: 'ledger', value: first === undefined ? 'it is not whole' : `${first.where}: ${first.what}`,
    limit: 'no backup was made of it; run verify-ledger and go back to the last backup', clause: 'HOUSE backup',
  }])
}
