import { LedgerFault } from './fault.ts'

/** Primary result codes of SQLite, and what a person can do about each. See https://sqlite.org/rescode.html */
const REMEDIES: ReadonlyMap<number, (path: string) => string> = new Map([
  [5, (path) => `The ledger ${path} is being written by another program, which did not finish in time. Close the other program, or try again.`],
  [6, (path) => `The ledger ${path} is locked by another task of this program. Try again.`],
  [8, (path) => `The ledger ${path} cannot be written: the file or its folder is read-only for you. Get write permission, or copy the ledger to a folder of your own.`],
  [10, (path) => `The disk that holds the ledger ${path} reports an error. Check the disk and its connection; nothing was half posted.`],
  [11, (path) => `The ledger ${path} is damaged: its file is not as it was written. Do not go on with it: keep it aside as it is, and open the last backup.`],
  [13, (path) => `The disk that holds the ledger ${path} is full. Free some space and try again; nothing was half posted.`],
  [14, (path) => `The ledger ${path} cannot be opened. Check that its folder exists and that you may write in it.`],
  [26, (path) => `${path} is not a ledger: it is no database file, or its beginning is damaged. Choose another file, or open the last backup.`],
])

/** What is wrong with the file of a ledger, in words for whoever must mend it. */
export class LedgerFileFault extends LedgerFault {}

/** The result code of an error of the SQLite driver; undefined for any other error. */
function resultCode(error: unknown): number | undefined {
  if (!(error instanceof Error) || !('errcode' in error) || typeof error.errcode !== 'number') return undefined
  return error.errcode & 0xff
}

/** An error of the driver that concerns the file, put into words; any other error as it is. */
export function inWords(path: string, error: unknown): unknown {
  const code = resultCode(error)
  const remedy = code === undefined ? undefined : REMEDIES.get(code)
  return remedy === undefined ? error : new LedgerFileFault(path, remedy(path), error)
}

/** Does one thing with the file, and puts its faults into words. */
export function withFile<T>(path: string, act: () => T): T {
  try {
    return act()
  } catch (error) {
    throw inWords(path, error)
  }
}
