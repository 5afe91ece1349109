import { join } from 'node:path'
import { openContext } from '../../main/shells/open-context.ts'
import { serveLoopback } from '../../main/shells/loopback/server.ts'
import { onePage } from './loopback.ts'

/** A host whose check of the ledger takes for ever; run as a program of its own, to be killed. Prints its address. */
const context = await openContext(join(process.argv[2] ?? '', 'ledger.db'), (line) => console.error(line))
Object.assign(context.store ?? {}, {
  check: async (progress: (step: { done: number; of: number; what: string }) => void) => {
    progress({ done: 1, of: 1000, what: 'checking' })
    await new Promise((resolve) => setTimeout(resolve, 600_000))
  },
})
const host = await serveLoopback({ context, files: onePage })
console.log(JSON.stringify({ origin: host.origin, token: host.token }))
