import { dirname, resolve } from 'node:path'
import { backupsOfOneLedger } from '../backup/index.ts'
import type { Context } from '../operations/context.ts'
import { makeKeyRing } from '../signing/index.ts'
import { software } from '../software.ts'
import { openStore } from '../store/index.ts'
import { settingsIn } from './settings.ts'

/**
 * What a shell hands to operations.
 * @param ledger path of the ledger's file, made when it is not there; null for a shell without a ledger
 * @param log where faults are written down
 * @param folder the data folder; that of the ledger's file when it is not given
 */
export async function openContext(ledger: string | null, log: (line: string) => void, folder = dirname(resolve(ledger ?? '.'))): Promise<Context> {
  return {
    place: ledger === null ? null : { folder, settings: settingsIn(folder), backups: backupsOfOneLedger() },
    store: ledger === null ? null : await openStore(ledger, { say: log }),
    keys: makeKeyRing(),
    now: () => new Date().toISOString(),
    software: software(),
    log,
  }
}
