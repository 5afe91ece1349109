import { parseArgs } from 'node:util'
import { join } from 'node:path'
import open from 'open'
import { dataFolder } from '../data-folder.ts'
import { openLedger } from '../open-ledger.ts'
import { pageFilesIn } from '../page-files.ts'
import { serveLoopback } from './server.ts'

const root = join(import.meta.dirname, '..', '..', '..')

/** Opens the ledger, serves the window on a loopback address and opens the system's browser on it. */
export async function startLoopback(args: readonly string[]): Promise<void> {
  const { values } = parseArgs({
    args: [...args],
    options: { folder: { type: 'string' }, port: { type: 'string' }, samples: { type: 'string' }, 'no-browser': { type: 'boolean' } },
  })
  const folder = dataFolder(values.folder, process.env, process.platform)
  const context = await openLedger({ folder, samples: values.samples, say: (line) => console.log(line), log: (line) => console.error(line) })
  const host = await serveLoopback({ context, files: await pageFilesIn(join(root, 'dist', 'renderer')), port: Number(values.port ?? 0) })
  console.log(`The ledger is in ${folder}. Ctrl-C ends the program.`)
  console.log(`Dipledger is at ${host.address}`)
  const stop = (): void => { void host.close().then(() => context.store?.close()).then(() => process.exit(0)) }
  process.once('SIGINT', stop)
  process.once('SIGTERM', stop)
  if (values['no-browser'] !== true) await openBrowser(host.address)
}

/** A machine without a browser is no fault: the address stands on the console. */
async function openBrowser(address: string): Promise<void> {
  const canShow = process.platform !== 'linux' || process.env['DISPLAY'] !== undefined || process.env['WAYLAND_DISPLAY'] !== undefined
  if (!canShow) return
  const browser = await open(address).catch(() => undefined)
  browser?.on('error', () => console.log('No browser could be opened; open the address above in one.'))
}
