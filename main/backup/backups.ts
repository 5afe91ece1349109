import type { Progress, TakenBackup } from '../operations/contracts/index.ts'
import { takeBackup, type BackupWork } from './take-backup.ts'

/** A backup that could not be made. */
export interface FailedBackup { readonly at: string; readonly message: string }

/** Makes the backups of one ledger, one at a time, and remembers how the last attempt went. */
export interface Backups {
  /** Whether one is being made. */
  readonly running: () => boolean
  /** How far the one being made is. */
  readonly step: () => Progress | null
  /** The last attempt, when it failed. */
  readonly failed: () => FailedBackup | null
  /** Waits for the one being made, then makes another. */
  readonly take: (work: BackupWork) => Promise<TakenBackup>
}

export function backupsOfOneLedger(): Backups {
  let last: Promise<unknown> = Promise.resolve()
  let waiting = 0
  let step: Progress | null = null
  let failed: FailedBackup | null = null
  const make = async (work: BackupWork): Promise<TakenBackup> => {
    work.signal.throwIfAborted()
    try {
      const taken = await takeBackup({ ...work, progress: (at) => { step = at; work.progress(at) } })
      failed = null
      return taken
    } catch (error) {
      if (!work.signal.aborted) failed = { at: work.now(), message: error instanceof Error ? error.message : String(error) }
      throw error
    } finally {
      step = null
    }
  }
  return {
    running: () => waiting > 0, step: () => step, failed: () => failed,
    take: (work) => {
      waiting += 1
      const made = last.then(() => make(work)).finally(() => { waiting -= 1 })
      last = made.catch(() => undefined)
      return made
    },
  }
}
