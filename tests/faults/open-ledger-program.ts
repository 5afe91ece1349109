import { openStore } from '../../main/store/index.ts'

/** Opens the ledger at a path and closes it again. */
const [, , path = ''] = process.argv
const store = await openStore(path)
const { seq, hash } = await store.head()
process.stdout.write(`${seq} ${hash}\n`)
await store.close()
