import { rm, rename } from 'node:fs/promises'
import type { Context } from '../operations/context.ts'
import { LedgerFault } from '../store/index.ts'
import { chosenLedger } from './data-folder.ts'
import { fillFromSamples } from './fill-from-samples.ts'
import { openContext } from './open-context.ts'
import { settingsIn } from './settings.ts'

export interface LedgerPlace {
  readonly folder: string
  /** The ledger that the start names: a path or an address. */
  readonly ledger?: string | undefined
  /** Folder of the samples that an empty ledger is filled from; absent for a ledger of one's own. */
  readonly samples?: string | undefined
  /** For the person at the console. */
  readonly say: (line: string) => void
  readonly log: (line: string) => void
}

/**
 * Opens the ledger that the start or the settings name, else that of the data folder. An empty one in the data folder is
 * filled from the samples beside its place and moved there when it is whole, so that a start which is broken off leaves
 * no half of a month.
 * @throws LedgerFault that says what is wrong and, where the settings named the ledger, how to open another
 */
export async function openLedger({ folder, ledger: named, samples, say, log }: LedgerPlace): Promise<Context> {
  const { place: ledger, chosenBy } = chosenLedger(folder, named, process.env)
  const home = { folder, chosenBy }
  const context = await openContext(ledger, log, home).catch((error: unknown) => { throw chosenBy === 'settings' ? withWayOut(error, folder) : error })
  if (samples === undefined || chosenBy !== 'folder' || (await context.store?.head())?.seq !== 0) return context
  await context.store?.close()
  const beside = `${ledger}.filling`
  for (const ending of ['', '-wal', '-shm']) await rm(`${beside}${ending}`, { force: true })
  const filling = await openContext(beside, log)
  try {
    await fillFromSamples(filling, samples, say)
  } finally {
    await filling.store?.close()
  }
  await rename(beside, ledger)
  return openContext(ledger, log, home)
}

function withWayOut(error: unknown, folder: string): unknown {
  if (!(error instanceof LedgerFault)) return error
  return new LedgerFault(error.path, `${error.message} To open another ledger, start with --ledger PLACE, or change “ledger” in ${settingsIn(folder).path}.`, error)
}
