/** Another program at the same ledger. `append PATH N MS`: posts N adjustments, with a pause between them. `hold PATH`: holds the write lock until its input ends. */
import { DatabaseSync } from 'node:sqlite'
import { setTimeout } from 'node:timers/promises'
import { openStore } from '../../main/store/index.ts'
import { adjustmentPosting } from './postings.ts'

const [what, path = '', n = '0', pause = '0'] = process.argv.slice(2)

if (what === 'append') {
  const store = await openStore(path)
  for (let i = 0; i < Number(n); i += 1) {
    await store.append([adjustmentPosting(`${i}.000`)])
    if (pause !== '0') await setTimeout(Number(pause))
  }
  await store.close()
} else if (what === 'open') {
  const store = await openStore(path)
  await store.append([adjustmentPosting('1.000')])
  await store.close()
} else {
  const raw = new DatabaseSync(path, { timeout: 5000 })
  raw.exec('begin immediate')
  console.log('held')
  process.stdin.resume().on('end', () => { raw.exec('rollback'); raw.close() })
}
