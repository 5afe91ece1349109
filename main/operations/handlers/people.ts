import { parseInstant } from '../../../core/gauge/index.ts'
import { versionInForce, type EntryOf, type Person } from '../../../core/ledger/index.ts'
import { accepted, allOf, optional, orRefuse, Refused, refused, type Outcome } from '../../../core/refusal/index.ts'
import { checkPassphrase, verifierOf } from '../../signing/index.ts'
import { atHead } from '../at-head.ts'
import type { Handler, LedgerContext } from '../context.ts'
import { keepsAnAdministrator } from '../desk/administrators.ts'
import { mayDo, notPermitted, whoMay } from '../desk/admit.ts'
import { logEvent } from '../desk/events.ts'
import { readPeople, type People } from '../desk/people.ts'
import { logRefusal } from '../desk/refusal-log.ts'
import { checkSignIn } from '../desk/sign-in.ts'
import { identityOn, partyOn, readRecord } from '../on-record.ts'
import { post } from '../post.ts'
import { enteredBy } from '../who.ts'

export const setPerson: Handler<'set-person'> = async ({ person, passphrase, ...given }, context, { signal }) => {
  const { store, desk, now } = context
  orRefuse(passphrase === undefined ? accepted('') : checkPassphrase(passphrase, 'passphrase'))
  const verifier = passphrase === undefined ? undefined : await verifierOf(passphrase, desk.cost)
  return atHead(store, signal, async (head) => {
    const [record, people] = await Promise.all([readRecord(store), readPeople(store, now())])
    const effectiveFrom = given.effectiveFrom ?? now()
    orRefuse(allOf<{ party: unknown; identity: unknown; from: unknown; fresh: unknown }>({
      party: partyOn(record, person.party, 'person.party'),
      identity: optional(person.identity, (id) => identityOn(record, id, 'person.identity')),
      from: parseInstant(effectiveFrom, 'effectiveFrom'),
      fresh: passphrase === undefined ? accepted(null) : mayHaveFirst(people, person),
    }))
    const set = { seq: head.seq + 1, kind: 'person-set', at: now(), by: '', body: { person, effectiveFrom }, previous: '', hash: '' } as const
    orRefuse(keepsAnAdministrator([...people.entries, set], await withPassphrase(context, people, verifier === undefined ? undefined : person.id), now(), person))
    const by = enteredBy(context, given.by ?? (people.onRecord ? undefined : person.name))
    return post(store, { kind: 'person-set', at: now(), by, body: { person, effectiveFrom } }, { expectedHead: head.hash, secrets: verifier === undefined ? {} : { passphrase: { person: person.id, verifier } } })
  })
}

/** Who is on record already changes the passphrase by set-passphrase. */
function mayHaveFirst({ entries }: People, { id }: Person): Outcome<null> {
  if (entries.every(({ body }) => body.person.id !== id)) return accepted(null)
  return refused({ code: 'already-on-record', path: 'person.id', value: id, limit: 'set-passphrase changes a passphrase', clause: 'HOUSE people' })
}

async function withPassphrase({ store }: LedgerContext, { entries }: People, added: string | undefined): Promise<ReadonlySet<string>> {
  const ids = [...new Set(entries.map(({ body }) => body.person.id))]
  const having = await Promise.all(ids.map(async (id) => (await store.passphraseVerifier(id) === undefined ? [] : [id])))
  return new Set([...having.flat(), ...(added === undefined ? [] : [added])])
}

export const setPassphrase: Handler<'set-passphrase'> = async ({ person: id, passphrase, oldPassphrase }, context) => {
  const { store, desk, caller, now } = context
  const people = await readPeople(store, now())
  const person = people.person(id)
  if (person === undefined) throw new Refused([{ code: 'unknown-person', path: 'person', value: id, limit: people.all.map((one) => one.id).join(', ') || 'nobody yet', clause: 'HOUSE people' }])
  const own = caller?.person.id === id
  if (!own && caller !== undefined && !mayDo(caller.person, ['administrator'])) {
    await logRefusal(context, people, { person: caller.person.id, operation: 'set-passphrase', why: `not permitted: that of ${id}` })
    throw new Refused([notPermitted('set-passphrase of somebody else', caller.person, whoMay(['administrator']))])
  }
  orRefuse(checkPassphrase(passphrase, 'passphrase'))
  if (own) await checkSignIn(context, people, id, oldPassphrase ?? '', 'oldPassphrase')
  const verifier = await verifierOf(passphrase, desk.cost)
  await logEvent(context, people, { event: 'passphrase-set', person: caller?.person.id ?? id, detail: own ? 'one’s own' : `that of ${id}` }, { passphrase: { person: id, verifier } })
  return {}
}

export const setDeskRules: Handler<'set-desk-rules'> = async ({ rules, effectiveFrom: given, by }, context) => {
  const { store, now } = context
  const effectiveFrom = given ?? now()
  const people = await readPeople(store, now())
  orRefuse(allOf<{ from: unknown; people: unknown }>({ from: parseInstant(effectiveFrom, 'effectiveFrom'), people: twoThere(rules.approval, people) }))
  return post(store, { kind: 'rules-set', at: now(), by: enteredBy(context, by), body: { rules, effectiveFrom } })
}

/** Two people cannot be asked for where there is nobody, or one alone. */
function twoThere(approval: 'one-person' | 'two-people', { all }: People): Outcome<null> {
  const active = all.filter((person) => person.active)
  if (approval === 'one-person' || active.length >= 2) return accepted(null)
  return refused({ code: 'missing-value', path: 'people', value: String(active.length), limit: 'with fewer than two people on record nobody could approve what another prepared; enter them with set-person first', clause: 'HOUSE people' })
}

export const listPeople: Handler<'list-people'> = async (_input, { store, now }) => {
  const at = now()
  const { entries, rules } = await readPeople(store, at)
  // who comes into force later is shown too
  const ids = [...new Set(entries.map(({ body }) => body.person.id))].toSorted()
  const shown = ids.flatMap((id) => versionInForce(entries, id, at) ?? entries.find(({ body }) => body.person.id === id) ?? [])
  return { rules, people: await Promise.all(shown.map(async ({ seq, body: { person, effectiveFrom } }: EntryOf<'person-set'>) => ({ ...person, seq, since: effectiveFrom, hasPassphrase: await store.passphraseVerifier(person.id) !== undefined }))) }
}
