import { randomBytes } from 'node:crypto'
import { closeSync, existsSync, openSync, rmSync } from 'node:fs'
import { Migrator } from 'kysely/migration'
import type { FileConnection } from './connection.ts'
import { copyLedgerFile } from './copy-file.ts'
import { inWords, LedgerFileFault } from './file-fault.ts'
import { migrations } from './migrations/index.ts'
import { putInPlace } from './put-in-place.ts'
import { openToRead, pragma } from './sqlite.ts'

/**
 * Before a migration changes a ledger, keeps a copy of it beside its file: `ledger.db.before-2026-11-26-evidence`. A copy
 * of the same head that is there already is enough; one of another head is left, and the new one bears a number.
 * @returns the path of the copy; undefined when no migration is due
 */
export async function keepBefore({ db, path }: FileConnection, waitMs: number): Promise<string | undefined> {
  const steps = await new Migrator({ db, provider: migrations }).getMigrations()
  const due = steps.find(({ executedAt }) => executedAt === undefined)
  if (due === undefined) return undefined
  const making = `${path}.keeping-${randomBytes(6).toString('hex')}`
  try {
    closeSync(openSync(making, 'wx', 0o600))
    await copyLedgerFile(path, making, waitMs, () => undefined, new AbortController().signal)
    const head = headIn(making)
    for (let n = 1; ; n += 1) {
      const kept = `${path}.before-${due.name}${n === 1 ? '' : `-${n}`}`
      if (existsSync(kept) ? headIn(kept) === head : putInPlace(making, kept)) return kept
    }
  } catch (error) {
    const told = inWords(path, error)
    if (told instanceof LedgerFileFault) throw told
    throw new LedgerFileFault(path, `The ledger ${path} must be brought to this version of the program, and no copy of it could be kept first (${error instanceof Error ? error.message : String(error)}). Nothing was changed; see that there is room, and that you may write, in its folder.`, error)
  } finally {
    for (const ending of ['', '-journal', '-wal', '-shm']) rmSync(making + ending, { force: true })
  }
}

/** Number and hash of the last entry of a file that is sound. */
function headIn(path: string): string {
  const { raw } = openToRead(path, 0)
  try {
    const sound = pragma(raw, 'integrity_check(1)')
    if (sound !== 'ok') throw new Error(`the copy is damaged: ${String(sound)}`)
    const last = raw.prepare('select seq, hash from entry order by seq desc limit 1').get()
    return last === undefined ? '' : `${String(last['seq'])} ${String(last['hash'])}`
  } finally {
    raw.close()
  }
}
