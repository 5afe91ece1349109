import type { Context } from '../operations/context.ts'
import { makeKeyRing } from '../signing/index.ts'
import { software } from '../software.ts'
import { openStore } from '../store/index.ts'

/**
 * What a shell hands to operations.
 * @param ledger path of the ledger's file, made when it is not there; null for a shell without a ledger
 * @param log where faults are written down
 */
export async function openContext(ledger: string | null, log: (line: string) => void): Promise<Context> {
  return {
    store: ledger === null ? null : await openStore(ledger),
    keys: makeKeyRing(),
    now: () => new Date().toISOString(),
    software: software(),
    log,
  }
}
