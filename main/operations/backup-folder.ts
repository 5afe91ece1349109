import { basename, dirname, join } from 'node:path'
import { firstHash, listBackups, readBackupName, refusePartialPath, refuseUnusableFolder } from '../backup/index.ts'
import { Refused } from '../../core/refusal/index.ts'
import type { Context, LedgerContext, LedgerPlace } from './context.ts'
import type { BackupRules, ListedBackup } from './contracts/index.ts'

/** Where the open ledger is at home. */
export function placeOf({ place }: Context): LedgerPlace {
  if (place !== null) return place
  throw new Refused([{ code: 'missing-value', path: 'ledger', value: '', limit: 'backups need a ledger that is open', clause: 'HOUSE backup' }])
}

/** Folders in which nothing but the ledger and its settings may lie. */
export function ownFolders({ place, store }: Context): readonly string[] {
  return [...place === null ? [] : [place.folder], ...store?.where.kind === 'file' ? [dirname(store.where.place)] : []]
}

export function rulesOf(context: Context): BackupRules | undefined {
  return placeOf(context).settings.read().backup
}

/** The folder that was named, else the one that was set; it must be there. */
export function usableFolder(context: Context, named: string | undefined): string {
  const folder = named ?? rulesOf(context)?.folder
  if (folder === undefined) throw new Refused([{ code: 'missing-value', path: 'folder', value: '', limit: 'name a folder for backups, or set one with set-backup-rules', clause: 'HOUSE backup' }])
  refuseUnusableFolder(folder, 'folder', ownFolders(context))
  return folder
}

/** The backups in a folder and what the rule does with each. */
export async function backupsIn(folder: string, context: LedgerContext): Promise<readonly ListedBackup[]> {
  return listBackups(folder, await firstHash(context.store), rulesOf(context)?.keep)
}

/** The path of a backup that is named alone or by its whole path. */
export function backupPath(context: Context, backup: string): string {
  if (basename(backup) === backup && readBackupName(backup) !== undefined && context.place !== null) return join(usableFolder(context, undefined), backup)
  refusePartialPath(backup, 'backup')
  return backup
}
