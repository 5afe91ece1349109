import { hostname } from 'node:os'
import { dirname, resolve } from 'node:path'
import { backupsOfOneLedger } from '../backup/index.ts'
import type { ChosenBy, Context } from '../operations/context.ts'
import { makeDesk } from '../operations/desk/desk.ts'
import { makeKeyRing, PASSPHRASE_COST } from '../signing/index.ts'
import { software } from '../software.ts'
import { isServerAddress, openStore } from '../store/index.ts'
import { dataFolder } from './data-folder.ts'
import { settingsIn } from './settings.ts'

/**
 * What a shell hands to operations.
 * @param ledger path of the ledger's file or address of its database, made when it is not there; null for a shell without a ledger
 * @param log where faults are written down
 * @param home its data folder and what named it; when not given, the folder of its file, and the start
 */
export async function openContext(ledger: string | null, log: (line: string) => void, { folder, chosenBy }: { readonly folder: string; readonly chosenBy: ChosenBy } = homeOf(ledger)): Promise<Context> {
  return {
    place: ledger === null ? null : { folder, settings: settingsIn(folder), backups: backupsOfOneLedger(), chosenBy },
    store: ledger === null ? null : await openStore(ledger, { say: log }),
    keys: makeKeyRing(),
    desk: makeDesk(hostname(), PASSPHRASE_COST),
    now: () => new Date().toISOString(),
    software: software(),
    log,
  }
}

function homeOf(ledger: string | null): { readonly folder: string; readonly chosenBy: ChosenBy } {
  const folder = ledger !== null && isServerAddress(ledger) ? dataFolder(undefined, process.env, process.platform) : dirname(resolve(ledger ?? '.'))
  return { folder, chosenBy: 'start' }
}
