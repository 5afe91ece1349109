import { USUAL_DESK_RULES, versionInForce, type DeskRules, type EntryOf, type Person } from '../../../core/ledger/index.ts'
import type { LedgerStore } from '../../store/index.ts'

/** Who works with the ledger, and by which rules, at an instant. */
export interface People {
  /** Whether there is anybody on record; until then no session is needed. */
  readonly onRecord: boolean
  readonly rules: DeskRules
  /** Everybody in force, active or not, in the order of their ids. */
  readonly all: readonly Person[]
  person(id: string): Person | undefined
  readonly entries: readonly EntryOf<'person-set'>[]
}

export async function readPeople(store: LedgerStore, at: string): Promise<People> {
  const [entries, rules] = await Promise.all([store.entriesOfKind('person-set'), store.entriesOfKind('rules-set')])
  const all = peopleAt(entries, at)
  return {
    onRecord: entries.length > 0, entries, all,
    rules: versionInForce(rules, '', at)?.body.rules ?? USUAL_DESK_RULES,
    person: (id) => all.find((person) => person.id === id),
  }
}

/** Everybody as in force at an instant. */
export function peopleAt(entries: readonly EntryOf<'person-set'>[], at: string): readonly Person[] {
  const ids = [...new Set(entries.map(({ body }) => body.person.id))].toSorted()
  return ids.flatMap((id) => versionInForce(entries, id, at)?.body.person ?? [])
}
