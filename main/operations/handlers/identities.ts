import { Buffer } from 'node:buffer'
import type { Identity } from '../../../core/ledger/index.ts'
import { accepted, allOf, orRefuse, refused, type Outcome } from '../../../core/refusal/index.ts'
import * as signing from '../../signing/index.ts'
import { atHead } from '../at-head.ts'
import type { Call, Handler, LedgerContext } from '../context.ts'
import { partyOn, readRecord, type OnRecord } from '../on-record.ts'
import { post, type Posted } from '../post.ts'
import { enteredBy } from '../who.ts'

export const createIdentity: Handler<'create-identity'> = async ({ id, name, party, passphrase, by }, context, call) => {
  await refuseUnfit(context, id, party)
  return keep(context, call, enteredBy(context, by), await signing.createIdentity({ id, name, party, passphrase, at: context.now() }))
}

export const importIdentity: Handler<'import-identity'> = async ({ id, party, file, filePassphrase, passphrase, by }, context, call) => {
  await refuseUnfit(context, id, party)
  const bytes = new Uint8Array(Buffer.from(file, 'base64'))
  return keep(context, call, enteredBy(context, by), await signing.importIdentity({ id, party, file: bytes, filePassphrase, passphrase, at: context.now() }))
}

async function refuseUnfit({ store }: LedgerContext, id: string, party: string): Promise<void> {
  const record = await readRecord(store)
  orRefuse(allOf<{ id: unknown; party: unknown }>({ id: unused(record, id), party: partyOn(record, party, 'party') }))
}

/** An identity is never set twice: tickets name it, and its key is kept under its id. */
function unused({ identities }: OnRecord, id: string): Outcome<string> {
  if (!identities.some((entry) => entry.body.identity.id === id)) return accepted(id)
  return refused({ code: 'already-on-record', path: 'id', value: id, limit: 'choose another id for a new key', clause: 'HOUSE keys' })
}

/** Entry and key at once: two that make the same identity at the same moment must not overwrite each other's key. */
async function keep(
  { store, now }: LedgerContext, { signal }: Call, by: string, { identity, protectedKey }: signing.ProtectedIdentity,
): Promise<Posted & { readonly identity: Identity }> {
  const posted = await atHead(store, signal, async (head) => {
    orRefuse(unused(await readRecord(store), identity.id))
    return post(store, { kind: 'identity-set', at: now(), by, body: { identity } }, { expectedHead: head.hash, secrets: { key: { identity: identity.id, key: protectedKey } } })
  })
  return { ...posted, identity }
}
