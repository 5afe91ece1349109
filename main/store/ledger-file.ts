import { randomBytes } from 'node:crypto'
import { accessSync, closeSync, constants, existsSync, mkdirSync, openSync, readSync, rmSync, statSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import type { Connection, FileConnection } from './connection.ts'
import { LedgerFileFault } from './file-fault.ts'
import { keepBefore } from './keep-before.ts'
import { refuseDamagedLog } from './log-damage.ts'
import { migrate } from './migrate.ts'
import { isFileError, putInPlace } from './put-in-place.ts'
import { APPLICATION_ID, openScratch, openToWrite } from './sqlite.ts'

const DATABASE_FILE = Buffer.from('SQLite format 3\0', 'latin1')
/** Header of a database file, and where the mark of its program stands in it. @see https://sqlite.org/fileformat.html 1.3 */
const HEADER = 100
const APPLICATION_ID_AT = 68

/** How a ledger of an older version of the program is taken. */
export interface OlderLedger {
  /** Whether a copy of it as it was is kept beside it. */
  readonly keep: boolean
  /** Told where, once it was brought to this version. */
  readonly say: (line: string) => void
}

/** Opens the ledger at a path; makes it first where there is none. */
export async function openLedgerFile(given: string, waitMs: number, { keep, say }: OlderLedger = { keep: true, say: () => undefined }): Promise<FileConnection> {
  const path = resolve(given)
  if (!existsSync(path)) await makeLedgerFile(path, waitMs)
  refuseOtherFiles(path)
  refuseDamagedLog(path)
  const opened = openToWrite(path, waitMs)
  try {
    const kept = keep ? await keepBefore(opened, waitMs) : undefined
    await brought(opened, kept)
    if (kept !== undefined) say(`The ledger ${path} was brought to this version of the program; as it was before, it is kept in ${kept}.`)
  } catch (error) {
    await shut(opened)
    throw error
  }
  return opened
}

/** A ledger for as long as the connection lives, in which something is made again beside another. */
export async function openBeside(): Promise<FileConnection> {
  const opened = openScratch()
  await brought(opened)
  return opened
}

async function brought({ db, path }: FileConnection, kept?: string): Promise<void> {
  await migrate(db, path, (message, cause) => new LedgerFileFault(path, kept === undefined ? message : `${message} A copy of it as it is stands in ${kept}.`, cause))
}

/** Closes a connection, whether or not a query was ever made on it. */
export async function shut(opened: Connection): Promise<void> {
  await opened.db.destroy()
  if (opened.flavour === 'sqlite' && opened.raw.isOpen) opened.raw.close()
}

/** Makes the ledger under another name first, so that at its own name there is a whole ledger or none. */
async function makeLedgerFile(path: string, waitMs: number): Promise<void> {
  const leftOver = ['-wal', '-journal'].map((ending) => path + ending).find((file) => existsSync(file))
  if (leftOver !== undefined) {
    throw new LedgerFileFault(path, `There is no ledger at ${path}, but ${leftOver} belongs to one. Put the ledger back beside it, or move that file away.`)
  }
  const making = `${path}.new-${randomBytes(6).toString('hex')}`
  try {
    mkdirSync(dirname(path), { recursive: true, mode: 0o700 })
    closeSync(openSync(making, 'wx', 0o600))
    await shut(await openEmptyFile(making, waitMs))
    // another process may have been first; its ledger is as good
    putInPlace(making, path)
  } catch (error) {
    if (isFileError(error)) throw new LedgerFileFault(path, `No ledger can be made at ${path} (${error.code}). Check that you may write in its folder, or choose another.`, error)
    throw error
  } finally {
    for (const ending of ['', '-wal', '-shm']) rmSync(making + ending, { force: true })
  }
}

/** Makes an empty ledger of a file that is empty or not there. */
export async function openEmptyFile(path: string, waitMs: number): Promise<FileConnection> {
  const opened = openToWrite(path, waitMs)
  try {
    opened.raw.exec(`pragma application_id = ${APPLICATION_ID}`)
    await brought(opened)
    return opened
  } catch (error) {
    await shut(opened)
    throw error
  }
}

/** Refuses what is no ledger before SQLite touches it. */
function refuseOtherFiles(path: string): void {
  const { size } = statSync(path)
  if (!statSync(path).isFile()) throw new LedgerFileFault(path, `${path} is not a file. Give the path of a ledger file.`)
  if (size === 0) throw new LedgerFileFault(path, `${path} is empty, and a ledger never is. If it held a ledger, open the last backup; else delete the empty file.`)
  const header = headerOf(path)
  if (!header.subarray(0, DATABASE_FILE.length).equals(DATABASE_FILE)) {
    throw new LedgerFileFault(path, `${path} is not a ledger: it is no database file, or its beginning is damaged. Choose another file, or open the last backup.`)
  }
  if (header.readUInt32BE(APPLICATION_ID_AT) !== APPLICATION_ID) {
    throw new LedgerFileFault(path, `${path} is a database, but not a ledger of this program, or its beginning is damaged. Choose another file, or open the last backup.`)
  }
}

/** The first bytes of a file that may be written. */
function headerOf(path: string): Buffer {
  const header = Buffer.alloc(HEADER)
  let file: number
  try {
    file = openSync(path, 'r+')
  } catch (error) {
    throw new LedgerFileFault(path, mayRead(path)
      ? `The ledger ${path} cannot be written: the file is read-only for you. Get write permission, or copy the ledger to a folder of your own.`
      : `The ledger ${path} cannot be read. Check that you may read it.`, error)
  }
  try { readSync(file, header, 0, HEADER, 0) } finally { closeSync(file) }
  return header
}

function mayRead(path: string): boolean {
  try {
    accessSync(path, constants.R_OK)
    return true
  } catch {
    return false
  }
}
