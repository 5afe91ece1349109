import { rm, rename } from 'node:fs/promises'
import type { Context } from '../operations/context.ts'
import { ledgerIn } from './data-folder.ts'
import { fillFromSamples } from './fill-from-samples.ts'
import { openContext } from './open-context.ts'

export interface LedgerPlace {
  readonly folder: string
  /** Folder of the samples that an empty ledger is filled from; absent for a ledger of one's own. */
  readonly samples?: string | undefined
  /** For the person at the console. */
  readonly say: (line: string) => void
  readonly log: (line: string) => void
}

/**
 * Opens the ledger in a data folder. An empty one is filled from the samples beside its place and moved there when it
 * is whole, so that a start which is broken off leaves no half of a month.
 */
export async function openLedger({ folder, samples, say, log }: LedgerPlace): Promise<Context> {
  const ledger = ledgerIn(folder)
  const context = await openContext(ledger, log)
  if (samples === undefined || (await context.store?.head())?.seq !== 0) return context
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
  return openContext(ledger, log)
}
