import { existsSync, lstatSync, realpathSync, statSync } from 'node:fs'
import { dirname, isAbsolute, join } from 'node:path'
import { Refused, type Finding } from '../../core/refusal/index.ts'
import { isFileError, LedgerFileFault } from '../store/index.ts'

const CLAUSE = 'HOUSE places on disk'

/** By this name the ledger stands in a data folder. */
const LEDGER = 'ledger.db'

/**
 * Refuses a path at which no new file may be made: one that is not whole, that lies in the folder of a ledger, or where
 * something is already.
 * @param field of the input, for the findings
 * @param own folders of the ledger that is open
 */
export function refuseTakenPlace(path: string, field: string, own: readonly string[]): void {
  refuseWrongPlace(path, field, own)
  if (lstatSync(path, { throwIfNoEntry: false }) !== undefined) refuse({ code: 'path-taken', path: field, value: path, limit: 'give a path at which there is nothing yet', clause: CLAUSE })
}

/** Refuses a folder in which no backups may be kept, or in which nothing can be written. */
export function refuseUnusableFolder(path: string, field: string, own: readonly string[]): void {
  refuseWrongPlace(path, field, own)
  const stands = statSync(path, { throwIfNoEntry: false })
  if (stands?.isDirectory() === true) return
  refuse({ code: 'folder-not-usable', path: field, value: path, limit: stands === undefined ? 'it is not there; connect its disk, or choose another folder' : 'it is a file; choose a folder', clause: CLAUSE })
}

const FULL: ReadonlySet<string> = new Set(['ENOSPC', 'EFBIG', 'EDQUOT'])

/** What went wrong with a folder in which files are made, in words for whoever can mend it; any other error as it is. */
export function folderFault(error: unknown, folder: string, field: string): unknown {
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  const result = error instanceof Error && 'errcode' in error && typeof error.errcode === 'number' ? error.errcode & 0xff : 0
  const nothing = 'nothing unfinished was left there, and what was there is as it was'
  if (FULL.has(code) || result === 13) return new LedgerFileFault(folder, `The disk of the folder ${folder} is full. Free some space there, or choose another folder; ${nothing}.`, error)
  if (code === 'EIO' || result === 10) return new LedgerFileFault(folder, `The disk of the folder ${folder} takes no more or reports an error. Check the disk and the room on it, or choose another folder; ${nothing}.`, error)
  const why = result === 14 || result === 8 ? 'no file can be made in it; get write permission, or choose another folder' : isFileError(error) ? WHY[error.code] : undefined
  return why === undefined ? error : new Refused([{ code: 'folder-not-usable', path: field, value: folder, limit: why, clause: CLAUSE }])
}

const WHY: Readonly<Record<string, string>> = {
  ENOENT: 'it is not there; connect its disk, or choose another folder',
  ENOTDIR: 'a part of the path is a file; choose another folder',
  EACCES: 'you may not write in it; get write permission, or choose another folder',
  EPERM: 'you may not write in it; get write permission, or choose another folder',
  EROFS: 'its disk can only be read; choose another folder',
}

/** Refuses a path that is not whole, or that lies in the folder of a ledger. */
export function refuseWrongPlace(path: string, field: string, own: readonly string[]): void {
  refusePartialPath(path, field)
  const ledger = ledgerFolderOf(path, own)
  if (ledger !== undefined) refuse({ code: 'path-not-allowed', path: field, value: path, limit: `it lies in ${ledger}, the folder of a ledger; choose a place outside it, best on another disk`, clause: CLAUSE })
}

/** Refuses a path that is not whole: nobody knows from where it would be followed. */
export function refusePartialPath(path: string, field: string): void {
  if (!isAbsolute(path) || path.includes('\0') || path.split(/[/\\]/).includes('..')) {
    refuse({ code: 'path-not-allowed', path: field, value: path, limit: 'write the whole path, from the top of the disk and without “..”', clause: CLAUSE })
  }
}

/** The folder of a ledger in which a path lies, links followed. A folder that a ledger shares with other things is its own only for what lies directly in it. */
function ledgerFolderOf(path: string, own: readonly string[]): string | undefined {
  const place = real(path)
  const shared = own.map(real).find((folder) => folder === place || folder === dirname(place))
  if (shared !== undefined) return shared
  for (let folder = place; ;) {
    if (existsSync(join(folder, LEDGER))) return folder
    const above = dirname(folder)
    if (above === folder) return undefined
    folder = above
  }
}

/** A path with the links in that part of it that is there followed. */
function real(path: string): string {
  if (existsSync(path)) return realpathSync(path)
  const above = dirname(path)
  return above === path ? path : join(real(above), path.slice(above.length))
}

function refuse(finding: Finding): never {
  throw new Refused([finding])
}
