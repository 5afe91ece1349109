import { existsSync } from 'node:fs'
import { isAbsolute } from 'node:path'
import { Refused, type Finding } from '../../../core/refusal/index.ts'
import { newLedgerAt, refuseTakenPlace, secondsSince } from '../../backup/index.ts'
import { isServerAddress, LedgerFault, openStore, shownPlace, type LedgerStore } from '../../store/index.ts'
import { ownFolders, placeOf } from '../backup-folder.ts'
import type { Call, Handler } from '../context.ts'
import type { OutputOf } from '../contracts/index.ts'

const CLAUSE = 'HOUSE storage'

export const ledgerHead: Handler<'ledger-head'> = async (_input, { store }) => {
  const { seq, hash } = await store.head()
  return { seq, hash }
}

export const storage: Handler<'storage'> = async (_input, context) => {
  const { store, place } = context
  const setting = place?.settings.read().ledger
  return {
    ...store.where, chosenBy: place?.chosenBy ?? 'start', ...await reach(store),
    setting: setting === undefined ? null : shownPlace(setting), settings: place?.settings.path ?? '',
  }
}

async function reach(store: LedgerStore): Promise<Pick<OutputOf<'storage'>, 'reachable' | 'trouble' | 'room' | 'clock'>> {
  try {
    await store.head()
    const { room, clock } = await store.surroundings()
    return { reachable: true, trouble: '', room, clock: clock && { aheadSeconds: Math.trunc(clock.ahead / 1000), agrees: clock.agrees } }
  } catch (error) {
    if (error instanceof LedgerFault) return { reachable: false, trouble: error.message, room: null, clock: null }
    throw error
  }
}

export const setStorage: Handler<'set-storage'> = async ({ ledger }, context) => {
  const { settings, chosenBy, folder } = placeOf(context)
  const takesEffect = chosenBy === 'start' ? 'never, while the start names another' : 'at the next start'
  if (ledger === null) {
    settings.change({ ledger: undefined })
    return { kind: 'file', place: folder, version: '', entries: 0, takesEffect }
  }
  if (!isServerAddress(ledger)) refuseNoLedger(ledger)
  const reached = await orUnusable('ledger', () => openStore(ledger))
  try {
    const { seq } = await reached.head()
    settings.change({ ledger })
    return { ...reached.where, entries: seq, takesEffect }
  } finally {
    await reached.close()
  }
}

export const copyLedger: Handler<'copy-ledger'> = async ({ to }, context, call) => {
  if (!isServerAddress(to)) return copyToFile(to, context, call)
  const began = performance.now()
  const { head, ...copied } = await orUnusable('to', () => context.store.copyToServer(to, call.progress, call.signal))
  return { kind: 'server', place: shownPlace(to), head: head.hash, ...copied, seconds: secondsSince(began) }
}

async function copyToFile(to: string, context: Parameters<Handler<'copy-ledger'>>[1], { progress, signal }: Call): ReturnType<Handler<'copy-ledger'>> {
  refuseTakenPlace(to, 'to', ownFolders(context))
  const { path, ...made } = await newLedgerAt(to, progress, signal, async (making) => {
    await context.store.copyTo(making, progress, signal)
    const copy = await openStore(making, { keepBefore: false })
    try {
      const found = await copy.check(progress, signal)
      const [first] = found.differences
      if (first !== undefined) throw new Refused([{ code: 'ledger-damaged', path: 'ledger', value: `${first.where}: ${first.what}`, limit: 'nothing was copied; run verify-ledger and go back to a backup', clause: 'HOUSE copying a ledger' }])
      return found
    } finally {
      await copy.close()
    }
  })
  // in a ledger that was checked each ticket has its one document
  return { kind: 'file', place: path, documents: made.tickets, ...made }
}

/** A ledger is named by its whole path, for nobody knows where the next start will run; a new one is not made by naming it. */
function refuseNoLedger(path: string): void {
  if (!isAbsolute(path)) refuseLedger({ code: 'path-not-allowed', path: 'ledger', value: path, limit: 'write the whole path, from the top of the disk, or an address postgresql://USER@HOST:PORT/DATABASE', clause: CLAUSE })
  if (!existsSync(path)) refuseLedger({ code: 'missing-value', path: 'ledger', value: path, limit: `there is no ledger at “${path}”`, clause: CLAUSE })
}

function refuseLedger(finding: Finding): never {
  throw new Refused([finding])
}

/** A place that was typed and cannot be used is refused with what is wrong about it. */
async function orUnusable<T>(field: string, act: () => Promise<T>): Promise<T> {
  try {
    return await act()
  } catch (error) {
    if (!(error instanceof LedgerFault)) throw error
    return refuseLedger({ code: 'path-not-allowed', path: field, value: error.path, limit: error.message.replace(/[.]$/, ''), clause: CLAUSE })
  }
}
