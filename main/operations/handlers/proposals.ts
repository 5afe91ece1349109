import type { z } from 'zod'
import { canonicalJson, sha256Hex, type Person } from '../../../core/ledger/index.ts'
import { Refused, type Finding } from '../../../core/refusal/index.ts'
import type { StoredProposal } from '../../store/index.ts'
import { OPERATION_NAMES, OPERATIONS, type Contract, type OperationName } from '../contracts/index.ts'
import type { Call, Caller, Context, Handler, LedgerContext } from '../context.ts'
import { admitted, mayDo, notPermitted, whoMay } from '../desk/admit.ts'
import { logEvent } from '../desk/events.ts'
import { readPeople, type People } from '../desk/people.ts'
import { logRefusal } from '../desk/refusal-log.ts'
import { wouldPost } from '../desk/would-post.ts'
import { summaryOfPosting } from '../entry-summary.ts'
import { enteredBy } from '../who.ts'

const clause = 'HOUSE people'

/** A proposal bears the number of the entry that says it was made. */
export const propose: Handler<'propose'> = async ({ operation, input, note }, context, call) => {
  const { store, now } = context
  const name = proposable(operation)
  const caller = callerOf(context, 'propose')
  const people = await readPeople(store, now())
  await refuseWithoutRole(name, caller, people, context)
  const prepared = withoutPassphrase(withoutName(input, context))
  const trial = await wouldPost(name, prepared, { ...context, caller: somebodyElse(caller.person, caller.person.id) }, call)
  if ('findings' in trial) throw new Refused(trial.findings.map(({ message, ...finding }) => ({ ...finding, path: `input.${finding.path}` })))
  const posts = trial.postings.map(summaryOfPosting)
  const { seq } = await logEvent(context, people, { event: 'proposal-made', person: caller.person.id, operation: name, detail: `${shortened([note, ...posts], ROOM_FOR_WORDS)}; ${sealOf(prepared)}` })
  const id = String(seq)
  await store.saveProposal({ id, operation: name, input: prepared, preparedBy: caller.person.id, preparedAt: now(), note })
  return { id, posts }
}

export const listProposals: Handler<'list-proposals'> = async (_input, context, call) => {
  const people = await readPeople(context.store, context.now())
  const proposals = []
  for (const proposal of await context.store.proposals()) proposals.push(await shown(proposal, people, context, call))
  return { proposals }
}

/** The proposal is taken before it is done, so that it is never done twice; it is put back when it comes to nothing. */
export const approveProposal: Handler<'approve-proposal'> = async ({ id, ...signing }, context, call) => {
  const { store, perform } = context
  const caller = callerOf(context, 'approve-proposal')
  const people = await readPeople(store, context.now())
  const standing = await proposalOf(context, id)
  const name = proposable(standing.operation)
  await refuseWithoutRole(name, caller, people, context)
  await refuseAltered(standing, store)
  await refuseOwn(standing, caller, people, context)
  const proposal = await store.takeProposal(id)
  if (proposal === undefined || perform === undefined) throw new Refused([unknown(id)])
  try {
    await refuseAltered(proposal, store)
    const result = await perform(name, withSigning(proposal.input, signing), admitted(context, store, { ...caller, preparedBy: proposal.preparedBy }), call)
    return { operation: name, result: asJson(result) }
  } catch (error) {
    await store.saveProposal(proposal)
    throw error
  }
}

export const rejectProposal: Handler<'reject-proposal'> = async ({ id, reason }, context) => {
  if (reason.trim() === '') throw new Refused([{ code: 'reason-missing', path: 'reason', value: reason, limit: 'say in a sentence why it is turned down', clause }])
  const caller = callerOf(context, 'reject-proposal')
  const people = await readPeople(context.store, context.now())
  await refuseWithoutRole(proposable((await proposalOf(context, id)).operation), caller, people, context)
  await takeAway(context, people, id, 'proposal-rejected', caller, reason)
  return {}
}

export const withdrawProposal: Handler<'withdraw-proposal'> = async ({ id }, context) => {
  const caller = callerOf(context, 'withdraw-proposal')
  const people = await readPeople(context.store, context.now())
  const { preparedBy } = await proposalOf(context, id)
  if (preparedBy !== caller.person.id) {
    await logRefusal(context, people, { person: caller.person.id, operation: 'withdraw-proposal', why: 'not permitted: somebody else’s' })
    throw new Refused([notPermitted('withdraw-proposal', caller.person, `${people.person(preparedBy)?.name ?? preparedBy}, who prepared it; others reject it`)])
  }
  await takeAway(context, people, id, 'proposal-withdrawn', caller, '')
  return {}
}

async function takeAway(context: LedgerContext, people: People, id: string, event: 'proposal-rejected' | 'proposal-withdrawn', { person }: Caller, reason: string): Promise<void> {
  const proposal = await context.store.takeProposal(id)
  if (proposal === undefined) throw new Refused([unknown(id)])
  await logEvent(context, people, { event, person: person.id, operation: proposal.operation, detail: shortened([`proposal ${id} of ${people.person(proposal.preparedBy)?.name ?? proposal.preparedBy}`, proposal.note, reason]) })
}

function shortened(parts: readonly string[], longest = 500): string {
  return parts.filter((part) => part !== '').join('; ').slice(0, longest)
}

/** What the hash leaves of the detail of an event. */
const ROOM_FOR_WORDS = 420

/** By this the entry of a proposal stands for what was prepared, to the last character. */
function sealOf(input: unknown): string {
  return `input ${sha256Hex(canonicalJson(asJson(input)))}`
}

/** What waits is kept where it may change; the entry that says it was made may not. */
async function refuseAltered({ id, operation, input, preparedBy }: StoredProposal, store: LedgerContext['store']): Promise<void> {
  const entry = await store.entry(Number(id))
  const made = entry?.kind === 'desk-event' ? entry.body.event : undefined
  if (made?.event === 'proposal-made' && made.operation === operation && made.person === preparedBy && made.detail?.endsWith(sealOf(input)) === true) return
  throw new Refused([{ code: 'ledger-damaged', path: 'id', value: `proposal ${id} is not what entry ${id} says was prepared`, limit: 'reject it, have it prepared again, and ask who can write in the database', clause }])
}

/** Who will approve it is not known yet: in what it would post stands no name. */
function somebodyElse(person: Person, preparedBy: string): Caller {
  return { person: { ...person, name: 'whoever approves it' }, preparedBy }
}

/** Only what is marked for approval is prepared; nothing that asks for a passphrase is. */
function proposable(operation: string): OperationName {
  const name = OPERATION_NAMES.find((one) => one === operation && termsOf(one).approval === true)
  if (name !== undefined) return name
  throw new Refused([{ code: 'not-proposable', path: 'operation', value: operation, limit: 'only what may need a second person can be', clause }])
}

function termsOf(name: OperationName): Pick<Contract<string, z.ZodType, z.ZodType>, 'approval' | 'roles' | 'says'> {
  return OPERATIONS[name]
}

function callerOf({ caller }: Context, operation: string): Caller {
  if (caller !== undefined) return caller
  throw new Refused([{ code: 'session-needed', path: 'desk', value: operation, limit: 'put people on record first with set-person, then sign in', clause }])
}

async function refuseWithoutRole(name: OperationName, { person }: Caller, people: People, context: LedgerContext): Promise<void> {
  const { roles } = termsOf(name)
  if (mayDo(person, roles)) return
  await logRefusal(context, people, { person: person.id, operation: name, why: 'not permitted' })
  throw new Refused([notPermitted(name, person, whoMay(roles))])
}

async function refuseOwn({ operation, preparedBy }: StoredProposal, { person }: Caller, people: People, context: LedgerContext): Promise<void> {
  if (people.rules.approval === 'one-person' || preparedBy !== person.id) return
  await logRefusal(context, people, { person: person.id, operation, why: 'approver is preparer' })
  throw new Refused([ownWork(person.name)])
}

function ownWork(name: string): Finding {
  return { code: 'approver-is-preparer', path: 'id', value: name, limit: 'at this terminal somebody else with the role approves', clause }
}

/** What waits for approval is kept as it is written, and so never holds a passphrase. */
function withoutPassphrase(input: unknown): unknown {
  if (typeof input !== 'object' || input === null || !('passphrase' in input)) return input
  throw new Refused([{ code: 'value-not-used', path: 'input.passphrase', value: 'not shown', limit: 'whoever approves it gives it then', clause }])
}

/** What is prepared, with the signature of whoever approves it where they give one. */
function withSigning(input: unknown, signing: { readonly identity?: string | undefined; readonly passphrase?: string | undefined }): unknown {
  const given = Object.fromEntries(Object.entries(signing).filter(([, value]) => value !== undefined))
  return typeof input === 'object' && input !== null ? { ...input, ...given } : input
}

/** The names under which it is entered and approved are that of whoever approves it. */
function withoutName(input: unknown, context: LedgerContext): unknown {
  if (typeof input !== 'object' || input === null) return input
  const { by, approvedBy: _whoever, ...rest } = { by: undefined, approvedBy: undefined, ...input }
  enteredBy(context, typeof by === 'string' ? by : undefined)
  return rest
}

async function proposalOf({ store }: LedgerContext, id: string): Promise<StoredProposal> {
  const found = (await store.proposals()).find((one) => one.id === id)
  if (found === undefined) throw new Refused([unknown(id)])
  return found
}

function unknown(id: string): Finding {
  return { code: 'unknown-proposal', path: 'id', value: id, limit: 'list-proposals shows what waits; it may have been approved, rejected or withdrawn', clause }
}

async function shown({ id, operation, input, preparedBy, preparedAt, note }: StoredProposal, people: People, context: LedgerContext, call: Call) {
  const name = proposable(operation)
  const { caller } = context
  const { roles, says } = termsOf(name)
  const notBy = whyNotBy(caller, preparedBy, roles, people)
  const trial = await wouldPost(name, input, caller === undefined ? context : { ...context, caller: notBy === '' ? { ...caller, preparedBy } : somebodyElse(caller.person, preparedBy) }, call)
  return {
    id, operation, says, input: asJson(input), note, preparedAt, preparedBy: { id: preparedBy, name: people.person(preparedBy)?.name ?? preparedBy },
    posts: 'postings' in trial ? trial.postings.map(summaryOfPosting) : [], wrong: 'findings' in trial ? trial.findings.map(({ message }) => message) : [],
    notBy,
  }
}

function whyNotBy(caller: Caller | undefined, preparedBy: string, roles: Contract<string, z.ZodType, z.ZodType>['roles'], { rules }: People): string {
  if (caller === undefined) return 'nobody is signed in'
  if (!mayDo(caller.person, roles)) return `needs ${whoMay(roles)}`
  return rules.approval === 'two-people' && caller.person.id === preparedBy ? 'you prepared it yourself' : ''
}

type Json = null | boolean | number | string | Json[] | { [key: string]: Json }
function asJson(value: unknown): Json {
  return JSON.parse(JSON.stringify(value))
}
