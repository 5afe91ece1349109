import { Refused } from '../../../core/refusal/index.ts'
import { refusal } from '../answer.ts'
import type { Answer } from '../answer.ts'
import type { Context } from '../context.ts'
import { readPeople } from './people.ts'
import { checkSignIn } from './sign-in.ts'

/**
 * Puts a person at a desk for a single call. Nothing is written into the ledger for it, save a wrong passphrase: who only
 * looks leaves the head as it was, and what is posted names the person.
 * @returns the refusal, or undefined when the person is at the desk
 */
export async function sitDown({ store, desk, now }: Context, person: string, passphrase: string): Promise<Extract<Answer, { refused: unknown }> | undefined> {
  if (store === null) return refusal([{ code: 'missing-value', path: 'ledger', value: '', limit: 'people are on record in a ledger; name its file with --ledger PATH or DIPLEDGER_LEDGER', clause: 'HOUSE people' }])
  const at = now()
  const people = await readPeople(store, at)
  if (!people.onRecord) return refusal([{ code: 'unknown-person', path: '--as', value: person, limit: 'nobody yet; set-person enters the first one', clause: 'HOUSE people' }])
  try {
    await checkSignIn({ store, desk, now }, people, person, passphrase, 'passphrase')
  } catch (error) {
    if (error instanceof Refused) return refusal(error.findings)
    throw error
  }
  desk.session = { person, openedAt: at, activeAt: at, locked: false }
  return undefined
}
