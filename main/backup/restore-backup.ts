import { mkdirSync } from 'node:fs'
import { dirname } from 'node:path'
import { Refused } from '../../core/refusal/index.ts'
import type { OutputOf, Progress } from '../operations/contracts/index.ts'
import { openStore, putInPlace } from '../store/index.ts'
import { checkedCopy } from './checked-copy.ts'
import { folderFault } from './places.ts'
import { secondsSince } from './take-backup.ts'
import { beginFile, clearRemains, dropFile } from './unfinished.ts'

/** Makes a new ledger at a path by an act that fills an unfinished file beside it; the act says what the file must hold. */
export async function newLedgerAt(
  to: string, progress: (step: Progress) => void, signal: AbortSignal, fill: (making: string) => Promise<{ readonly head: string; readonly entries: number; readonly tickets: number }>,
): Promise<OutputOf<'restore-backup'>> {
  const began = performance.now()
  const making = begin(dirname(to))
  try {
    const { head, entries, tickets } = await fill(making)
    signal.throwIfAborted()
    if (!putInPlace(making, to)) throw taken(to)
    const store = await openStore(to)
    try {
      const after = await store.check(progress, signal)
      if (!after.whole || after.head !== head) throw new Refused([{ code: 'backup-not-whole', path: 'to', value: to, limit: `after it was written it differs (${after.differences[0]?.where ?? 'head'}); do not use it, and check the disk`, clause: 'HOUSE restore' }])
    } finally {
      await store.close()
    }
    return { path: to, head, entries, tickets, seconds: secondsSince(began) }
  } catch (error) {
    throw folderFault(error, dirname(to), 'to')
  } finally {
    dropFile(making)
  }
}

/** Makes a new ledger from a backup, checked before it has its name and after. */
export async function restoreBackup(backup: string, to: string, progress: (step: Progress) => void, signal: AbortSignal): Promise<OutputOf<'restore-backup'>> {
  return newLedgerAt(to, progress, signal, async (making) => {
    const found = await checkedCopy(backup, making, progress, signal)
    const [first] = found.differences
    if (!found.whole) throw new Refused([{ code: 'backup-not-whole', path: 'backup', value: backup, limit: `${first?.where ?? 'the file'}: ${first?.what ?? 'damaged'}; keep it aside as it is, and restore another backup`, clause: 'HOUSE restore' }])
    return found
  })
}

function begin(folder: string): string {
  try {
    mkdirSync(folder, { recursive: true, mode: 0o700 })
    clearRemains(folder)
    return beginFile(folder)
  } catch (error) {
    throw folderFault(error, folder, 'to')
  }
}

function taken(to: string): Refused {
  return new Refused([{ code: 'path-taken', path: 'to', value: to, limit: 'give a path at which there is nothing yet', clause: 'HOUSE places on disk' }])
}
