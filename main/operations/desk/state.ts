import type { z } from 'zod'
import type { OPERATIONS } from '../contracts/index.ts'
import type { LedgerContext } from '../context.ts'
import { locksAt } from './idle.ts'
import { readPeople, type People } from './people.ts'

type DeskNow = z.input<(typeof OPERATIONS)['desk']['output']>

/** Who is at the desk, as the window is told. */
export async function deskNow(context: LedgerContext): Promise<DeskNow> {
  const { store, desk, now } = context
  const [people, terminals] = await Promise.all([readPeople(store, now()), store.entriesOfKind('terminal-set')])
  const active = people.all.filter((person) => person.active)
  return {
    station: desk.station, terminal: terminals.at(-1)?.body.terminal.name ?? '', peopleOnRecord: people.onRecord, rules: people.rules,
    people: await Promise.all(active.map(async ({ id, name, party }) => ({ id, name, party, hasPassphrase: await store.passphraseVerifier(id) !== undefined }))),
    session: sessionNow(context, people),
  }
}

function sessionNow({ desk: { session } }: LedgerContext, people: People): DeskNow['session'] {
  const person = session === undefined ? undefined : people.person(session.person)
  if (session === undefined || person?.active !== true) return null
  const { id, name, party, roles } = person
  return { person: { id, name, party, roles }, openedAt: session.openedAt, locked: session.locked, locksAt: locksAt(session.activeAt, people.rules.idleMinutes) }
}
