import { Refused, type Finding } from '../../../core/refusal/index.ts'
import { passphraseFits } from '../../signing/index.ts'
import type { WrongPassphrases } from './desk.ts'
import { logEvent, type AtDesk } from './events.ts'
import { apart } from './idle.ts'
import type { People } from './people.ts'
import { wrongBefore } from './wrong-before.ts'

/** So many wrong passphrases in a row cost nothing but their scrypt. */
const FREE_TRIES = 2
const FIRST_WAIT_MS = 5000
const LONGEST_WAIT_MS = 300_000
/** What stands in the ledger for somebody who is not on record: what was typed may have been a passphrase. */
const STRANGER = 'not on record'
const NONE: WrongPassphrases = { count: 0, at: '' }

/** How long to wait after so many wrong passphrases in a row [ms]: 5 s after the third, then twice as long each time, up to five minutes. */
export function waitAfter(count: number): number {
  return count <= FREE_TRIES ? 0 : Math.min(FIRST_WAIT_MS * 2 ** (count - FREE_TRIES - 1), LONGEST_WAIT_MS)
}

/**
 * Checks the passphrase of a person. A wrong one, also of a stranger, costs a full scrypt and is logged.
 * @throws Refused `sign-in-wrong`, `sign-in-delayed`
 */
export async function checkSignIn(at: AtDesk, people: People, person: string, passphrase: string, path: string): Promise<void> {
  const { desk } = at
  await desk.inTurn(async () => {
    const known = people.person(person)
    const key = known?.id ?? STRANGER
    const before = desk.wrong.get(key) ?? await wrongBefore(at.store, key, desk.station) ?? NONE
    refuseHaste(before, key, at.now(), path)
    const verifier = known?.active === true ? await at.store.passphraseVerifier(known.id) : undefined
    if (await passphraseFits(verifier, passphrase, desk.cost)) {
      desk.wrong.set(key, NONE)
      return
    }
    const count = before.count + 1
    desk.wrong.set(key, { count, at: at.now() })
    await logEvent(at, { person: () => undefined }, { event: 'passphrase-wrong', person: key, detail: `${count} in a row at this desk` })
    throw new Refused([{ code: 'sign-in-wrong', path, value: known?.name ?? person, limit: advice(count), clause: 'NIST-SP-800-63B 5.2.2' }])
  })
}

function advice(count: number): string {
  const wait = waitAfter(count)
  return wait === 0 ? 'mind capitals and the keyboard layout' : `mind capitals and the keyboard layout, and wait ${seconds(wait)} before the next try`
}

function refuseHaste(before: WrongPassphrases, key: string, now: string, path: string): void {
  const wait = waitAfter(before.count)
  const left = wait === 0 ? 0 : wait - apart(before.at, now)
  if (left <= 0) return
  const finding: Finding = { code: 'sign-in-delayed', path, value: key, limit: `wait ${seconds(left)}`, clause: 'NIST-SP-800-63B 5.2.2' }
  throw new Refused([finding])
}

function seconds(ms: number): string {
  return `${Math.ceil(ms / 1000)} s`
}
