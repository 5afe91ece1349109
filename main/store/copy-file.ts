import type { Progress } from '../operations/contracts/index.ts'
import { withFile } from './file-fault.ts'
import { openToRead, sqlite } from './sqlite.ts'

/** Pages copied at once, before others have their turn. */
const PAGES = 500

/**
 * Copies a ledger file as it stands at this moment into a new file, while this program and others go on posting. The
 * copy is one file with nothing beside it.
 * @param path of the ledger
 * @param to of the copy
 * @throws the signal's reason when it was cancelled; whatever was copied is left to the caller
 */
export async function copyLedgerFile(path: string, to: string, waitMs: number, progress: (step: Progress) => void, signal: AbortSignal): Promise<void> {
  const { raw } = openToRead(path, waitMs)
  const { backup, DatabaseSync } = sqlite()
  try {
    // a read transaction holds the moment: what others post meanwhile does not begin the copy anew
    withFile(path, () => { raw.exec('begin'); raw.prepare('select count(*) from sqlite_schema').get() })
    progress({ done: 0, of: 0, what: 'pages' })
    await backup(raw, to, {
      rate: PAGES,
      progress: ({ totalPages, remainingPages }) => {
        signal.throwIfAborted()
        progress({ done: totalPages - remainingPages, of: totalPages, what: 'pages' })
      },
    })
  } finally {
    raw.close()
  }
  signal.throwIfAborted()
  const copy = new DatabaseSync(to)
  try { copy.exec('pragma journal_mode = delete') } finally { copy.close() }
}
