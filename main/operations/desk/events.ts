import type { DeskEvent } from '../../../core/ledger/index.ts'
import type { LedgerStore, Secrets } from '../../store/index.ts'
import { post, type Posted } from '../post.ts'
import type { Desk } from './desk.ts'
import type { People } from './people.ts'

/** What is needed to write down what happened at a desk. */
export interface AtDesk { readonly store: LedgerStore; readonly desk: Desk; readonly now: () => string }

/** How an entry is signed when nobody on record was at the desk. */
export const NOBODY = 'nobody at the desk'

/** Writes an event into the ledger, as that of a person on record or of nobody, and with it what it says was set. */
export async function logEvent({ store, desk, now }: AtDesk, people: Pick<People, 'person'>, event: DeskEvent, secrets: Secrets = {}): Promise<Posted> {
  const person = people.person(event.person)
  const origin = { station: desk.station, ...(person === undefined ? {} : { person: person.id }) }
  return post(store, { kind: 'desk-event', at: now(), by: person?.name ?? NOBODY, body: { event }, origin }, { secrets })
}
