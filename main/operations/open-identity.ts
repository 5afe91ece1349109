import type { webcrypto } from 'node:crypto'
import { instantKey, type Identity } from '../../core/ledger/index.ts'
import { accepted, allOf, andThen, Refused, refused, type Outcome } from '../../core/refusal/index.ts'
import type { LedgerContext } from './context.ts'
import { identityOn, type OnRecord } from './on-record.ts'

/** Somebody on record whose key is open. */
export interface OpenIdentity { readonly identity: Identity; readonly key: webcrypto.CryptoKey }

/** Opens the key of an identity on record whose certificate is valid now; every finding at once. */
export async function openIdentity(
  { identity: id, passphrase }: { readonly identity: string; readonly passphrase: string }, paths: { readonly identity: string; readonly passphrase: string },
  record: Pick<OnRecord, 'identities'>, { store, keys, now }: LedgerContext,
): Promise<Outcome<OpenIdentity>> {
  const found = identityOn(record, id, paths.identity)
  if (!found.ok) return found
  const identity = found.value
  const key = await openKey()
  return andThen(allOf<{ valid: null; key: webcrypto.CryptoKey }>({ valid: certificateValid(identity, now(), paths.identity), key }), (open) => accepted({ identity, key: open.key }))

  async function openKey(): Promise<Outcome<webcrypto.CryptoKey>> {
    const kept = await store.protectedKey(id)
    if (kept === undefined) return refused({ code: 'unknown-identity', path: paths.identity, value: id, limit: 'its certificate only; its key is not in this ledger', clause: 'HOUSE keys' })
    try {
      return accepted(await keys.open(identity, kept, passphrase, paths.passphrase))
    } catch (error) {
      if (error instanceof Refused) return refused(...error.findings)
      throw error
    }
  }
}

function certificateValid({ name, notBefore, notAfter }: Identity, now: string, path: string): Outcome<null> {
  const moment = instantKey(now)
  if (instantKey(notBefore) <= moment && moment <= instantKey(notAfter)) return accepted(null)
  return refused({ code: 'certificate-not-valid', path, value: name, limit: `${notBefore} to ${notAfter}`, clause: 'EN-319-142-1' })
}
