import { accepted, allOf, refused, andThen, type Outcome } from '../../core/refusal/index.ts'
import { refuseSides, type Signer } from '../../core/ticket/index.ts'
import { signDocument } from '../signing/index.ts'
import type { LedgerContext, ParsedInput } from './context.ts'
import { openIdentity, type OpenIdentity } from './open-identity.ts'
import { identityOn, partyOn, type OnRecord } from './on-record.ts'

type Signing = ParsedInput<'post-ticket'>['signers'][number]

/** A person who is ready to sign: the key is open. */
export interface ReadySigner extends OpenIdentity { readonly role: Signer['role'] }

/** Opens the keys of both signers: two identities, on record, entitled, with valid certificates. Every finding at once. */
export async function openSigners({ signers, ticket }: ParsedInput<'post-ticket'>, record: OnRecord, context: LedgerContext): Promise<Outcome<readonly [ReadySigner, ReadySigner]>> {
  const [first, second] = signers
  const both = allOf<{ two: null; entitled: null; first: ReadySigner; second: ReadySigner }>({
    two: differ(first, second),
    entitled: entitled(signers, ticket, record),
    first: await openSigner(first, 'signers.0', record, context),
    second: await openSigner(second, 'signers.1', record, context),
  })
  return andThen(both, (ready) => accepted([ready.first, ready.second]))
}

/** Both sides are there, each signed for by somebody who may; who is not on record is refused elsewhere. */
function entitled(signers: readonly [Signing, Signing], { from, to }: ParsedInput<'post-ticket'>['ticket'], record: OnRecord): Outcome<null> {
  const known = signers.map(({ identity, role }) => ({ found: identityOn(record, identity, ''), role }))
  const terminal = record.terminals.at(-1)?.body.terminal.code
  const parties = [from, to].every((code) => partyOn(record, code, '').ok)
  if (terminal === undefined || !parties || signers[0].identity === signers[1].identity || known.some(({ found }) => !found.ok)) return accepted(null)
  const people = known.flatMap(({ found, role }) => (found.ok ? [{ name: found.value.name, party: found.value.party, role }] : []))
  const findings = refuseSides({ terminal, from, to, signers: people })
  return findings.length > 0 ? refused(...findings) : accepted(null)
}

function differ(first: Signing, second: Signing): Outcome<null> {
  if (first.identity !== second.identity) return accepted(null)
  return refused({ code: 'signers-not-two', path: 'signers', value: `${first.identity} twice`, limit: 'one for each side', clause: 'CFR43-3174.12 (b)' })
}

async function openSigner({ role, ...signing }: Signing, path: string, record: OnRecord, context: LedgerContext): Promise<Outcome<ReadySigner>> {
  const open = await openIdentity(signing, { identity: `${path}.identity`, passphrase: `${path}.passphrase` }, record, context)
  return andThen(open, (ready) => accepted({ ...ready, role }))
}

/** How a signer stands on the ticket. */
export function signerOnTicket({ identity, role }: ReadySigner): Signer {
  return { identity: identity.id, name: identity.name, party: identity.party, role, certificate: identity.fingerprint }
}

/** The document after each signature, in order. */
export async function signInTurn(document: Uint8Array, signers: readonly ReadySigner[], at: string): Promise<readonly Uint8Array[]> {
  const revisions: Uint8Array[] = []
  for (const [place, signer] of signers.entries()) {
    revisions.push(await signDocument(revisions.at(-1) ?? document, { ...signer, field: `signature-${place + 1}`, at }))
  }
  return revisions
}
