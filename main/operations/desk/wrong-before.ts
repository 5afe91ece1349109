import type { Entry } from '../../../core/ledger/index.ts'
import type { LedgerStore } from '../../store/index.ts'
import type { WrongPassphrases } from './desk.ts'

/** After more wrong passphrases than these the wait grows no further. */
const COUNTED = 12

/**
 * The wrong passphrases of a person in a row at a desk, as the ledger knows them: a program that is started again, or a
 * call of the command line, does not begin anew.
 */
export async function wrongBefore(store: Pick<LedgerStore, 'trail'>, person: string, station: string): Promise<WrongPassphrases | undefined> {
  const { entries } = await store.trail({ kinds: ['desk-event'], subject: person, matches: (entry) => isTry(entry, station) }, COUNTED)
  const right = entries.findIndex((entry) => !isWrong(entry))
  const [last, ...others] = right === -1 ? entries : entries.slice(0, right)
  return last && { count: others.length + 1, at: last.at }
}

/** A passphrase that was given at a desk, right or wrong, or a new one, which ends what was wrong with the old. */
function isTry(entry: Entry, station: string): boolean {
  if (entry.kind !== 'desk-event') return false
  const { event } = entry.body.event
  return event === 'passphrase-set' || (entry.origin?.station === station && (event === 'session-opened' || event === 'passphrase-wrong'))
}

function isWrong(entry: Entry): boolean {
  return entry.kind === 'desk-event' && entry.body.event.event === 'passphrase-wrong'
}
