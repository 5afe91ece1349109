import type { LedgerStore } from '../store/index.ts'
import type { NameOf } from './entry-summary.ts'

/** Names of the people on record, as the ledger knew them. */
export interface Names {
  /** Names as they stood when an entry was posted. */
  readonly at: (seq: number) => NameOf
  /** The id of the only person who ever bore a name, whatever its case. */
  readonly idOf: (name: string) => string | undefined
}

export async function readNames(store: Pick<LedgerStore, 'entriesOfKind'>): Promise<Names> {
  const people = (await store.entriesOfKind('person-set')).map(({ seq, body: { person } }) => ({ seq, id: person.id, name: person.name }))
  return {
    at: (seq) => (id) => people.findLast((one) => one.id === id && one.seq <= seq)?.name,
    idOf: (name) => {
      const ids = new Set(people.filter((one) => one.name.toLowerCase() === name.toLowerCase()).map(({ id }) => id))
      return ids.size === 1 ? [...ids][0] : undefined
    },
  }
}
