/**
 * A program to be killed: `back-up-program.ts LEDGER FOLDER` says `begun` and takes a backup; then it says its name, or why
 * there is none.
 */
import { takeBackup } from '../../main/backup/index.ts'
import { openStore } from '../../main/store/index.ts'

const [path = '', folder = ''] = process.argv.slice(2)
const store = await openStore(path)
process.stdout.write('begun\n')
try {
  const { name } = await takeBackup({ store, folder, now: () => new Date().toISOString(), progress: () => undefined, signal: new AbortController().signal })
  process.stdout.write(`${name}\n`)
} catch (error) {
  process.stdout.write(`${error instanceof Error ? `${error.name}: ${error.message}` : String(error)}\n`)
}
await store.close()
