import { Refused } from '../../../core/refusal/index.ts'
import type { Handler } from '../context.ts'
import { active } from '../desk/admit.ts'
import { logEvent } from '../desk/events.ts'
import { readPeople } from '../desk/people.ts'
import { checkSignIn } from '../desk/sign-in.ts'
import { deskNow } from '../desk/state.ts'

/** Being asked is no sign of work; that somebody used keyboard or pointer is. */
export const desk: Handler<'desk'> = async ({ worked }, context) => {
  if (worked === true) active(context.desk, context.now())
  return deskNow(context)
}

/** Opens a session, or unlocks the one there is; somebody else who signs in takes the desk over. */
export const openSession: Handler<'open-session'> = async ({ person: id, passphrase }, context) => {
  const people = await readPeople(context.store, context.now())
  if (!people.onRecord) throw new Refused([{ code: 'unknown-person', path: 'person', value: id, limit: 'nobody yet; set-person enters the first one', clause: 'HOUSE people' }])
  await checkSignIn(context, people, id, passphrase, 'passphrase')
  const at = context.now()
  const before = context.desk.session
  const resumed = before?.person === id
  if (before !== undefined && !resumed) await logEvent(context, people, { event: 'session-closed', person: before.person, detail: `${people.person(id)?.name ?? id} took the desk over` })
  context.desk.session = { person: id, openedAt: resumed ? before.openedAt : at, activeAt: at, locked: false }
  await logEvent(context, people, { event: 'session-opened', person: id, ...(resumed && before.locked ? { detail: 'unlocked' } : {}) })
  return deskNow(context)
}

export const closeSession: Handler<'close-session'> = async (_input, context) => {
  const { session } = context.desk
  if (session !== undefined) {
    context.desk.session = undefined
    await logEvent(context, await readPeople(context.store, context.now()), { event: 'session-closed', person: session.person, ...(session.locked ? { detail: 'while the desk was locked' } : {}) })
  }
  return deskNow(context)
}

export const lockDesk: Handler<'lock-desk'> = async ({ idle }, context) => {
  const { session } = context.desk
  if (session !== undefined && !session.locked) {
    context.desk.session = { ...session, locked: true }
    await logEvent(context, await readPeople(context.store, context.now()), { event: 'session-locked', person: session.person, detail: idle === true ? 'without work, as the window saw it' : 'by hand' })
  }
  return deskNow(context)
}
