import { randomBytes } from 'node:crypto'
import { closeSync, existsSync, fsyncSync, linkSync, openSync, renameSync, rmSync, writeFileSync } from 'node:fs'
import { dirname } from 'node:path'

/** A disk that knows no second name for a file, as those of memory sticks. */
const NO_LINKS: ReadonlySet<string> = new Set(['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK'])

/**
 * Gives a finished file its name, unless that name is taken. The file and its name are on disk when this returns; at its
 * name there is the whole file or none.
 * @returns false when something else has the name; the finished file is then left as it is
 */
export function putInPlace(finished: string, path: string): boolean {
  toDisk(finished, 'r+')
  if (!named(finished, path)) return false
  if (process.platform !== 'win32') toDisk(dirname(path))
  return true
}

/** Writes a small file anew, for its owner alone: whoever reads it finds the old text or the new one, never a part. */
export function replaceFile(path: string, text: string): void {
  const making = `${path}.new-${randomBytes(6).toString('hex')}`
  try {
    writeFileSync(making, text, { mode: 0o600, flag: 'wx', flush: true })
    renameSync(making, path)
  } finally {
    rmSync(making, { force: true })
  }
  if (process.platform !== 'win32') toDisk(dirname(path))
}

/** Has a file, or the names in a folder, written to disk. */
export function toDisk(path: string, flags: 'r' | 'r+' = 'r'): void {
  const opened = openSync(path, flags)
  try { fsyncSync(opened) } finally { closeSync(opened) }
}

function named(finished: string, path: string): boolean {
  try {
    linkSync(finished, path)
    rmSync(finished)
    return true
  } catch (error) {
    if (!isFileError(error)) throw error
    if (error.code === 'EEXIST') return false
    if (!NO_LINKS.has(error.code)) throw error
  }
  if (existsSync(path)) return false
  renameSync(finished, path)
  return true
}

/** Whether an error comes from the file system. */
export function isFileError(error: unknown): error is Error & { readonly code: string } {
  return error instanceof Error && 'syscall' in error && 'code' in error && typeof error.code === 'string'
}
