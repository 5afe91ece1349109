import { statSync } from 'node:fs'
import { dirname } from 'node:path'
import { beginFile, dropFile, folderFault, newLedgerAt, refusePartialPath, refuseTakenPlace, restoreBackup as restored, secondsSince } from '../../backup/index.ts'
import { Refused } from '../../../core/refusal/index.ts'
import { exportLedger as exported } from '../../exchange/export-ledger.ts'
import { importLedger as imported } from '../../exchange/import-ledger.ts'
import { putInPlace } from '../../store/index.ts'
import { backupPath, ownFolders } from '../backup-folder.ts'
import type { Handler } from '../context.ts'
import { recomputesBy } from '../recomputes.ts'

export const restoreBackup: Handler<'restore-backup'> = async ({ backup, to }, context, { progress, signal }) => {
  refuseTakenPlace(to, 'to', ownFolders(context))
  return restored(backupPath(context, backup), to, progress, signal)
}

export const exportLedger: Handler<'export-ledger'> = async ({ to }, context, { progress, signal }) => {
  refuseTakenPlace(to, 'to', ownFolders(context))
  const began = performance.now()
  const making = begin(dirname(to))
  try {
    const written = await exported(context.store, making, progress, signal)
    if (!putInPlace(making, to)) refuseTakenPlace(to, 'to', [])
    return { path: to, ...written, seconds: secondsSince(began) }
  } catch (error) {
    throw folderFault(error, dirname(to), 'to')
  } finally {
    dropFile(making)
  }
}

export const importLedger: Handler<'import-ledger'> = async ({ from, to }, context, { progress, signal }) => {
  refuseTakenPlace(to, 'to', ownFolders(context))
  refusePartialPath(from, 'from')
  if (statSync(from, { throwIfNoEntry: false })?.isFile() !== true) throw new Refused([{ code: 'missing-value', path: 'from', value: from, limit: `there is no file at “${from}”`, clause: 'HOUSE import' }])
  return newLedgerAt(to, progress, signal, (making) => {
    // the store makes its own file, and makes none over another
    dropFile(making)
    return imported(from, making, recomputesBy(context.software), progress, signal)
  })
}

function begin(folder: string): string {
  try {
    return beginFile(folder)
  } catch (error) {
    throw folderFault(error, folder, 'to')
  }
}
