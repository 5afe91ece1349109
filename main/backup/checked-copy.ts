import { copyFile } from 'node:fs/promises'
import { existsSync, statSync } from 'node:fs'
import { Refused } from '../../core/refusal/index.ts'
import type { Progress } from '../operations/contracts/index.ts'
import { LedgerFileFault, openStore, type LedgerCheck } from '../store/index.ts'
import { firstHash } from './take-backup.ts'

/** What a check of a backup found. */
export interface Found extends LedgerCheck { readonly first: string }

/**
 * Copies a backup to a path, brings the copy to this version of the program and checks all of it; the backup itself is
 * only read. The copy is left to the caller.
 */
export async function checkedCopy(backup: string, to: string, progress: (step: Progress) => void, signal: AbortSignal): Promise<Found> {
  refuseNoBackup(backup)
  progress({ done: 0, of: 0, what: 'copying' })
  await copyFile(backup, to)
  signal.throwIfAborted()
  try {
    const store = await openStore(to, { keepBefore: false })
    try {
      return { ...await store.check(progress, signal), first: await firstHash(store) }
    } finally {
      await store.close()
    }
  } catch (error) {
    if (!(error instanceof LedgerFileFault)) throw error
    // the first sentence: the others tell what to do with a ledger, and this is a backup
    const what = error.message.replaceAll(to, backup).replace(/[.](\s.*)?$/s, '')
    return { whole: false, entries: 0, tickets: 0, recomputed: 0, head: '', first: '', differences: [{ where: 'opening', what }], noticed: [] }
  }
}

/** Refuses what cannot be a backup: nothing, no file, or a ledger that is in use. */
function refuseNoBackup(backup: string): void {
  const refuse = (limit: string): never => { throw new Refused([{ code: 'backup-not-whole', path: 'backup', value: backup, limit, clause: 'HOUSE backup' }]) }
  const stands = statSync(backup, { throwIfNoEntry: false })
  if (stands === undefined) refuse('there is no such file')
  if (stands?.isFile() !== true) refuse('it is no file')
  if (existsSync(`${backup}-wal`)) refuse('it is a ledger in use, not a backup; take a backup of it first')
}
