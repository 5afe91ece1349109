import { createPrivateKey, createPublicKey, X509Certificate, type KeyObject } from 'node:crypto'
import * as asn1 from 'asn1js'
import * as pki from 'pkijs'
import { accepted, orRefuse, refused, Refused, type Finding, type Outcome } from '../../core/refusal/index.ts'
import { identityOf, keyKindOf } from './certificate.ts'
import type { ProtectedIdentity } from './identity.ts'
import { checkPassphrase, sealKey } from './vault.ts'

export interface ImportedIdentity {
  readonly id: string
  readonly party: string
  /** PKCS #12, as a certificate authority hands it over. */
  readonly file: Uint8Array
  readonly filePassphrase: string
  /** Passphrase under which the key is kept from now on. */
  readonly passphrase: string
  /** The instant now: an expired certificate is refused. */
  readonly at: string
  /** scrypt N; the vault's own when absent. */
  readonly cost?: number
}

interface Contents { readonly key: Uint8Array<ArrayBuffer>; readonly certificate: Uint8Array<ArrayBuffer> }

const LARGEST_FILE = 1024 * 1024
const LONGEST_NAME = 80
/** Bag types. @source RFC-7292 4.2 */
const SHROUDED_KEY = '1.2.840.113549.1.12.10.1.2'
const CERTIFICATE = '1.2.840.113549.1.12.10.1.3'

/**
 * Takes a signing identity from a PKCS #12 file: RSA of 2048 bits or more, or ECDSA on P-256. The signer's name is the
 * certificate's common name.
 * @throws Refused `passphrase-too-short`, `passphrase-wrong`, `identity-file-unreadable`, `certificate-not-valid`
 * @source RFC-7292
 */
export async function importIdentity(wanted: ImportedIdentity): Promise<ProtectedIdentity> {
  const checked = checkPassphrase(wanted.passphrase, 'passphrase')
  const opened = await openPkcs12(wanted.file, wanted.filePassphrase)
  if (!checked.ok && !opened.ok) throw new Refused([...checked.findings, ...opened.findings])
  const passphrase = orRefuse(checked)
  const { key, certificate } = orRefuse(opened)
  const read = new X509Certificate(certificate)
  const name = /^CN=(.+)$/m.exec(read.subject)?.[1]?.slice(0, LONGEST_NAME)
  if (!name) throw new Refused([unusable('its certificate names nobody')])
  const identity = identityOf({ id: wanted.id, name, party: wanted.party }, certificate)
  const now = new Date(wanted.at)
  if (now < read.validFromDate || now > read.validToDate) {
    throw new Refused([{ code: 'certificate-not-valid', path: 'file', value: name, limit: `${identity.notBefore} to ${identity.notAfter}`, clause: 'HOUSE keys' }])
  }
  return { identity, protectedKey: await sealKey(key, wanted.id, passphrase, wanted.cost) }
}

function unusable(why: string): Finding {
  return { code: 'identity-file-unreadable', path: 'file', value: 'this file', limit: why, clause: 'RFC-7292' }
}

async function openPkcs12(file: Uint8Array, passphrase: string): Promise<Outcome<Contents>> {
  if (file.length > LARGEST_FILE) return refused(unusable(`it is ${file.length} bytes long, the limit is ${LARGEST_FILE}`))
  const password = new TextEncoder().encode(passphrase).buffer
  const pfx = readPfx(file)
  if (!pfx) return refused(unusable('it is not a PKCS #12 file protected by a passphrase'))
  try {
    await pfx.parseInternalValues({ password, checkIntegrity: true })
  } catch {
    // The integrity check fails in the same way for a wrong passphrase and for an altered file.
    return refused({ code: 'passphrase-wrong', path: 'filePassphrase', value: 'the file', limit: 'ask whoever made the file', clause: 'RFC-7292' })
  }
  const bags = await safeBags(pfx, password)
  const certificates = bags.flatMap((bag) => certificateOf(bag))
  for (const key of bags.flatMap((bag) => privateKeyOf(bag, passphrase))) {
    const own = certificates.find((certificate) => createPublicKey(key).equals(new X509Certificate(certificate).publicKey))
    if (own && !keyKindOf(own)) return refused(unusable('its key is neither RSA of 2048 bits or more nor ECDSA on P-256'))
    if (own) return accepted({ key: new Uint8Array(key.export({ format: 'der', type: 'pkcs8' })), certificate: own })
  }
  return refused(unusable('no private key with its certificate was found in it'))
}

function readPfx(file: Uint8Array): pki.PFX | undefined {
  try {
    const pfx = pki.PFX.fromBER(new Uint8Array(file))
    return pfx.macData ? pfx : undefined
  } catch {
    // Not a PFX at all, whatever the parser stumbled over.
    return undefined
  }
}

async function safeBags(pfx: pki.PFX, password: ArrayBuffer): Promise<readonly pki.SafeBag[]> {
  const safe = pfx.parsedValue?.authenticatedSafe
  if (!safe) return []
  try {
    await safe.parseInternalValues({ safeContents: safe.safeContents.map(() => ({ password })) })
    const contents = (safe.parsedValue as { safeContents: readonly { value: pki.SafeContents }[] }).safeContents
    return contents.flatMap(({ value }) => value.safeBags)
  } catch {
    // A cipher or layout that is not known here: as if the file held nothing.
    return []
  }
}

function privateKeyOf(bag: pki.SafeBag, passphrase: string): readonly KeyObject[] {
  if (bag.bagId !== SHROUDED_KEY || !(bag.bagValue instanceof pki.PKCS8ShroudedKeyBag)) return []
  const encrypted = Buffer.from(bag.bagValue.toSchema().toBER())
  try {
    return [createPrivateKey({ key: encrypted, format: 'der', type: 'pkcs8', passphrase })]
  } catch {
    // A cipher that is not known here: as if the file did not hold this key.
    return []
  }
}

function certificateOf(bag: pki.SafeBag): readonly Uint8Array<ArrayBuffer>[] {
  if (bag.bagId !== CERTIFICATE || !(bag.bagValue instanceof pki.CertBag) || !(bag.bagValue.certValue instanceof asn1.OctetString)) return []
  return [new Uint8Array(bag.bagValue.certValue.valueBlock.valueHexView)]
}
