import { parseArgs } from 'node:util'
import { join } from 'node:path'
import open from 'open'
import { keepSchedule } from '../backup-schedule.ts'
import { LedgerFault } from '../../store/index.ts'
import { dataFolder } from '../data-folder.ts'
import { openLedger } from '../open-ledger.ts'
import { pageFilesIn } from '../page-files.ts'
import { whyNotServe } from './free-port.ts'
import { serveLoopback } from './server.ts'

const HIGHEST_PORT = 65_535
const USAGE = 'npm start -- [--folder PATH] [--ledger PATH-OR-ADDRESS] [--empty] [--port NUMBER] [--no-browser]'

/** What a start of the loopback host is asked for. */
interface Asked {
  readonly folder: string | undefined
  readonly ledger: string | undefined
  readonly samples: string | undefined
  /** Any free one when 0. */
  readonly port: number
  readonly browser: boolean
}

const root = join(import.meta.dirname, '..', '..', '..')

/** Opens the ledger, serves the window on a loopback address and opens the system's browser on it. */
export async function startLoopback(args: readonly string[]): Promise<void> {
  const values = asked(args)
  if (typeof values === 'string') {
    console.error(`${values}\n${USAGE}`)
    process.exitCode = 2
    return
  }
  const why = await whyNotServe(values.port)
  if (why !== undefined) {
    console.error(why)
    process.exitCode = 1
    return
  }
  const folder = dataFolder(values.folder, process.env, process.platform)
  const context = await openLedger({ folder, ledger: values.ledger, samples: values.samples, say: (line) => console.log(line), log: (line) => console.error(line) }).catch(toldOnConsole)
  if (context === undefined) return
  const host = await serveLoopback({ context, files: await pageFilesIn(join(root, 'dist', 'renderer')), port: values.port })
  console.log(`The ledger is ${context.store?.where.place ?? folder}. Ctrl-C ends the program.`)
  console.log(`Dipledger is at ${host.address}`)
  const stopBackups = keepSchedule(context)
  const stop = (): void => { void host.close().then(stopBackups).then(() => context.store?.close()).then(() => process.exit(0)) }
  process.once('SIGINT', stop)
  process.once('SIGTERM', stop)
  if (values.browser) await openBrowser(host.address)
}

/** What is wrong with the place of a ledger is for the person at the console; anything else is a fault of ours. */
function toldOnConsole(error: unknown): undefined {
  if (!(error instanceof LedgerFault)) throw error
  console.error(error.message)
  process.exitCode = 1
}

/** What was asked for; or why it cannot be understood. */
function asked(args: readonly string[]): Asked | string {
  try {
    const { values } = parseArgs({
      args: [...args],
      options: { folder: { type: 'string' }, ledger: { type: 'string' }, port: { type: 'string' }, samples: { type: 'string' }, 'no-browser': { type: 'boolean' } },
    })
    const { folder, ledger, samples, port = '0' } = values
    if (!/^\d{1,5}$/.test(port) || Number(port) > HIGHEST_PORT) return `“${port}” is no port: write a number from 0 (any that is free) to ${HIGHEST_PORT}.`
    return { folder, ledger, samples, port: Number(port), browser: values['no-browser'] !== true }
  } catch (error) {
    return error instanceof Error ? error.message : String(error)
  }
}

/** A machine without a browser is no fault: the address stands on the console. */
async function openBrowser(address: string): Promise<void> {
  const canShow = process.platform !== 'linux' || process.env['DISPLAY'] !== undefined || process.env['WAYLAND_DISPLAY'] !== undefined
  if (!canShow) return
  const browser = await open(address).catch(() => undefined)
  browser?.on('error', () => console.log('No browser could be opened; open the address above in one.'))
}
