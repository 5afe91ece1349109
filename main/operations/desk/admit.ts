import type { Person } from '../../../core/ledger/index.ts'
import { Refused, type Finding } from '../../../core/refusal/index.ts'
import type { LedgerStore } from '../../store/index.ts'
import { OPERATIONS, ROLES, type Contract, type OperationName } from '../contracts/index.ts'
import type { Caller, Context } from '../context.ts'
import type { Desk } from './desk.ts'
import { logEvent, type AtDesk } from './events.ts'
import { isIdle } from './idle.ts'
import { readPeople, type People } from './people.ts'
import { logCounted, logRefusal } from './refusal-log.ts'

type Terms = Pick<Contract<string, never, never>, 'roles' | 'ledger' | 'approval' | 'passive' | 'nobody'>

/**
 * Whether whoever is at the desk may do an operation: gives the context in which it is done, whose store writes down
 * where each entry came from. With nobody on record everybody may do everything.
 * @throws Refused `session-needed`, `session-locked`, `not-permitted`, `approval-needed`
 */
export async function admit(name: OperationName, context: Context): Promise<Context> {
  const { store, desk, now } = context
  const terms: Terms = OPERATIONS[name]
  if (store === null || (terms.ledger === 'none' && forEverybody(terms))) return context
  const people = await readPeople(store, now())
  if (!people.onRecord) return { ...context, store: asLongAsNobody(stamping(store, { station: desk.station }), name) }
  const at: AtDesk = { store, desk, now }
  await logCounted(at, people)
  await lockWhenIdle(at, people)
  const caller = callerAt(desk, people)
  if (terms.nobody !== true) {
    const refusal = refusedTo(name, terms, caller, people, desk)
    if (refusal !== undefined) {
      if (mattersToTheLog(refusal, terms)) await logRefusal(at, people, { person: desk.session?.person ?? '', operation: name, why: refusal.code.replaceAll('-', ' ') })
      throw new Refused([refusal])
    }
    if (terms.ledger === 'writes' && terms.passive !== true) active(desk, now())
  }
  return admitted(context, store, caller)
}

/** The context of whoever calls; its store puts the origin on each entry. */
export function admitted(context: Context, store: LedgerStore, caller: Caller | undefined): Context {
  const { station } = context.desk
  if (caller === undefined) return { ...context, store: stamping(store, { station }) }
  const { person: { id }, preparedBy } = caller
  return { ...context, caller, store: stamping(store, { station, person: id, ...(preparedBy === undefined ? {} : { preparedBy }) }) }
}

function stamping(store: LedgerStore, origin: { readonly station: string; readonly person?: string; readonly preparedBy?: string }): LedgerStore {
  return {
    ...store,
    append: (postings, options) => store.append(postings.map((posting) => ({ ...posting, origin: posting.origin ?? origin })), options),
    alone: (act) => store.alone((held) => act(stamping(held, origin))),
  }
}

/** What was begun with nobody on record ends when somebody is, whoever entered him elsewhere meanwhile. */
function asLongAsNobody(store: LedgerStore, name: OperationName, own = { entered: 0 }): LedgerStore {
  return {
    ...store,
    append: async (postings, options) => {
      if ((await store.entriesOfKind('person-set')).length > own.entered) throw new Refused([sessionNeeded(name)])
      const entries = await store.append(postings, options)
      own.entered += entries.filter(({ kind }) => kind === 'person-set').length
      return entries
    },
    alone: (act) => store.alone((held) => act(asLongAsNobody(held, name, own))),
  }
}

function sessionNeeded(name: OperationName): Finding {
  return { code: 'session-needed', path: 'desk', value: name, limit: 'sign in first, on the command line with --as PERSON', clause: 'HOUSE people' }
}

function forEverybody({ roles }: Terms): boolean {
  return ROLES.every((role) => roles.includes(role))
}

/** Whoever has an open session and is still active. */
function callerAt({ session }: Desk, people: People): Caller | undefined {
  const person = session === undefined || session.locked ? undefined : people.person(session.person)
  return person?.active === true ? { person } : undefined
}

/** Locks the desk where nobody has worked for too long, and writes that down once. */
async function lockWhenIdle(at: AtDesk, people: People): Promise<void> {
  const { desk, now } = at
  const { session } = desk
  if (session === undefined || session.locked || !isIdle(session.activeAt, now(), people.rules.idleMinutes)) return
  desk.session = { ...session, locked: true }
  await logEvent(at, people, { event: 'session-locked', person: session.person, detail: `after ${people.rules.idleMinutes} minutes without work` })
}

/** Somebody works here. */
export function active(desk: Desk, at: string): void {
  if (desk.session !== undefined && !desk.session.locked) desk.session = { ...desk.session, activeAt: at }
}

function refusedTo(name: OperationName, { roles, approval }: Terms, caller: Caller | undefined, { rules, person }: People, { session }: Desk): Finding | undefined {
  const clause = 'HOUSE people'
  if (session?.locked === true) return { code: 'session-locked', path: 'desk', value: person(session.person)?.name ?? session.person, limit: 'give the passphrase to go on', clause }
  if (caller === undefined) return sessionNeeded(name)
  if (!mayDo(caller.person, roles)) return notPermitted(name, caller.person, whoMay(roles))
  if (approval === true && rules.approval === 'two-people') return { code: 'approval-needed', path: 'operation', value: name, limit: 'prepare it with propose; somebody else approves it', clause }
  return undefined
}

/** Looking is refused quietly; an attempt to write or to do what one may not is written down. */
function mattersToTheLog({ code }: Finding, { ledger }: Terms): boolean {
  return code === 'not-permitted' || code === 'approval-needed' || ledger === 'writes'
}

export function mayDo({ roles }: Pick<Person, 'roles'>, needed: Terms['roles']): boolean {
  return needed.some((role) => roles.includes(role))
}

export function whoMay(roles: Terms['roles']): string {
  return `the role of ${roles.join(' or ')}`
}

export function notPermitted(operation: string, { name, roles }: Person, needs: string): Finding {
  return { code: 'not-permitted', path: 'operation', value: `${operation} by ${name} (${roles.join(', ') || 'no role'})`, limit: needs, clause: 'HOUSE people' }
}
