import { existsSync, mkdirSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import { addToRecord, beginFile, checkedCopy, dropFile, fingerprint, folderFault, newestVerified, nextDue, readBackupName, refuseUnusableFolder, refuseWrongPlace, shortenRecord } from '../../backup/index.ts'
import { Refused } from '../../../core/refusal/index.ts'
import { backupPath, backupsIn, ownFolders, placeOf, rulesOf, usableFolder } from '../backup-folder.ts'
import type { Handler, LedgerContext } from '../context.ts'
import type { ListedBackup } from '../contracts/index.ts'

export const backupNow: Handler<'backup-now'> = async ({ folder }, context, { progress, signal }) => {
  const { store, now } = context
  return placeOf(context).backups.take({ store, folder: usableFolder(context, folder), now, progress, signal })
}

export const listBackups: Handler<'list-backups'> = async ({ folder: named }, context) => {
  const folder = usableFolder(context, named)
  return { folder, backups: [...await backupsIn(folder, context)] }
}

export const backupState: Handler<'backup-state'> = async (_input, context) => {
  const { backups } = placeOf(context)
  const rules = rulesOf(context)
  const found = await listOrFailure(context)
  const last = newestVerified(found.backups, context.now())
  return {
    rules: rules ?? null, running: backups.running(), last: last === undefined ? null : { name: last.name, at: last.at, entries: last.entries, head: last.head },
    due: rules === undefined ? null : nextDue(rules, last?.at, context.now()), failed: backups.failed() ?? found.failed,
  }
}

export const setBackupRules: Handler<'set-backup-rules'> = async (rules, context) => {
  refuseWrongPlace(rules.folder, 'folder', ownFolders(context))
  try {
    // one folder is made, not a whole path of them: its disk may not be there
    if (!existsSync(rules.folder)) mkdirSync(rules.folder, { mode: 0o700 })
  } catch (error) {
    throw folderFault(error, rules.folder, 'folder')
  }
  refuseUnusableFolder(rules.folder, 'folder', ownFolders(context))
  dropFile(tryFile(rules.folder))
  placeOf(context).settings.change({ backup: rules })
  return rules
}

export const verifyBackup: Handler<'verify-backup'> = async ({ backup }, context, { progress, signal }) => {
  const path = backupPath(context, backup)
  // it is opened in a copy beside it
  refuseWrongPlace(path, 'backup', ownFolders(context))
  const [folder, name] = [dirname(path), basename(path)]
  const copy = tryFile(folder)
  try {
    const { whole, head, entries, tickets, first, differences } = await checkedCopy(path, copy, progress, signal)
    const { sha256 } = await fingerprint(path)
    if (readBackupName(name) !== undefined) addToRecord(folder, { name, whole, verifiedAt: context.now(), sha256, head, entries, tickets, first })
    return { name, whole, head, entries, tickets, differences: differences.map(({ where, what }) => ({ where, what })) }
  } catch (error) {
    throw folderFault(error, folder, 'backup')
  } finally {
    dropFile(copy)
  }
}

export const retireBackups: Handler<'retire-backups'> = async ({ delete: wanted = false }, context) => {
  const folder = usableFolder(context, undefined)
  const backups = await backupsIn(folder, context)
  const retired = backups.filter(({ fate }) => fate === 'retired').map(({ name }) => name)
  if (wanted && retired.length > 0) {
    await refuseUnlessNewestStands(folder, backups)
    for (const name of retired) {
      rmSync(join(folder, name))
      context.log(`${context.now()} backup ${name} was retired by the rule of what is kept`)
    }
    shortenRecord(folder, new Set(backups.map(({ name }) => name).filter((name) => !retired.includes(name))))
  }
  return { retired, kept: backups.length - retired.length, deleted: wanted }
}

/** An older backup goes only while the newest one is, byte for byte, the file that was verified. */
async function refuseUnlessNewestStands(folder: string, backups: readonly ListedBackup[]): Promise<void> {
  const newest = backups.find(({ because }) => because.includes('newest'))
  if (newest !== undefined && (await fingerprint(join(folder, newest.name))).sha256 === newest.sha256) return
  throw new Refused([{ code: 'backup-not-whole', path: 'backup', value: newest?.name ?? folder, limit: 'it is not the file that was verified, so that no older one was deleted; make a new backup first', clause: 'HOUSE backup' }])
}

function tryFile(folder: string): string {
  try {
    return beginFile(folder)
  } catch (error) {
    throw folderFault(error, folder, 'folder')
  }
}

async function listOrFailure(context: LedgerContext): Promise<{ readonly backups: readonly ListedBackup[]; readonly failed: { readonly at: string; readonly message: string } | null }> {
  if (rulesOf(context) === undefined) return { backups: [], failed: null }
  try {
    return { backups: await backupsIn(usableFolder(context, undefined), context), failed: null }
  } catch (error) {
    if (!(error instanceof Refused)) throw error
    return { backups: [], failed: { at: context.now(), message: error.message } }
  }
}
