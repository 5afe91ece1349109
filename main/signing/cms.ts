import { verify, webcrypto, X509Certificate } from 'node:crypto'
import * as asn1 from 'asn1js'
import * as pki from 'pkijs'
import { fingerprint } from './certificate.ts'

const OID = {
  data: '1.2.840.113549.1.7.1',
  signedData: '1.2.840.113549.1.7.2',
  contentType: '1.2.840.113549.1.9.3',
  messageDigest: '1.2.840.113549.1.9.4',
  signingCertificateV2: '1.2.840.113549.1.9.16.2.47',
  sha256: '2.16.840.1.101.3.4.2.1',
  ecdsaWithSha256: '1.2.840.10045.4.3.2',
  sha256WithRsa: '1.2.840.113549.1.1.11',
} as const

type Bytes = Uint8Array<ArrayBuffer>

/** What was read from a signature: whose certificate it carries, and whether it fits. */
export interface CmsReading {
  /** SHA-256 of the certificate's DER. */
  readonly certificate: string
  readonly validFrom: Date
  readonly validTo: Date
  readonly holds: boolean
}

/**
 * A detached signature as PAdES baseline B-B wants it: SHA-256, content type, message digest and the certificate's
 * hash among the signed attributes; no signing time, since the file states it.
 * @param digest SHA-256 of the signed bytes
 * @source EN-319-142-1 6.3
 */
export async function signCms(digest: Bytes, key: webcrypto.CryptoKey, certificate: Bytes): Promise<Bytes> {
  const attributes = await signedAttributes(digest, certificate)
  const algorithm = key.algorithm.name === 'ECDSA' ? { name: 'ECDSA', hash: 'SHA-256' } : { name: key.algorithm.name }
  const raw = new Uint8Array(await webcrypto.subtle.sign(algorithm, key, asSet(attributes).toBER()))
  return enveloped(digest, certificate, key.algorithm.name === 'ECDSA' ? ecdsaToDer(raw) : raw)
}

/**
 * Reads a detached signature and checks it over a digest. The signature is written again from its certificate and
 * value and must come out byte for byte: no field that is not signed can differ unseen.
 * @param contents the DER with the zeros that fill the room kept for it
 * @returns undefined where no certificate can be read from it, by the parser of signatures and by that of keys
 */
export async function readCms(contents: Bytes, digest: Bytes): Promise<CmsReading | undefined> {
  try {
    const info = pki.ContentInfo.fromBER(contents)
    const data = new pki.SignedData({ schema: info.content })
    const certificate = data.certificates?.[0]
    const value = data.signerInfos[0]?.signature.valueBlock.valueHexView
    if (!(certificate instanceof pki.Certificate) || !value) return undefined
    const der = new Uint8Array(certificate.toSchema().toBER())
    const expected = await enveloped(digest, der, new Uint8Array(value))
    const same = expected.length <= contents.length && contents.every((byte, at) => byte === (expected[at] ?? 0))
    const signed = new Uint8Array(asSet(await signedAttributes(digest, der)).toBER())
    const { publicKey, validFromDate, validToDate } = new X509Certificate(der)
    return { certificate: fingerprint(der), validFrom: validFromDate, validTo: validToDate, holds: same && verify('sha256', signed, publicKey, value) }
  } catch {
    // Whatever a parser says of bytes that are no signature, they are no signature.
    return undefined
  }
}

async function signedAttributes(digest: Bytes, certificate: Bytes): Promise<asn1.AsnType[]> {
  const hash = await webcrypto.subtle.digest('SHA-256', certificate)
  const essCertificate = sequence(sequence(sequence(new asn1.OctetString({ valueHex: hash }))))
  // In the order of their encodings, as DER has it for a set: the shortest first.
  return [
    attribute(OID.contentType, oid(OID.data)),
    attribute(OID.messageDigest, new asn1.OctetString({ valueHex: digest })),
    attribute(OID.signingCertificateV2, essCertificate),
  ]
}

async function enveloped(digest: Bytes, der: Bytes, value: Bytes): Promise<Bytes> {
  const certificate = pki.Certificate.fromBER(der)
  const rsa = certificate.subjectPublicKeyInfo.algorithm.algorithmId === '1.2.840.113549.1.1.1'
  const signer = sequence(
    new asn1.Integer({ value: 1 }),
    sequence(certificate.issuer.toSchema(), certificate.serialNumber),
    sequence(oid(OID.sha256)),
    tagged(0, await signedAttributes(digest, der)),
    rsa ? sequence(oid(OID.sha256WithRsa), new asn1.Null()) : sequence(oid(OID.ecdsaWithSha256)),
    new asn1.OctetString({ valueHex: value }),
  )
  const signedData = sequence(
    new asn1.Integer({ value: 1 }), asSet([sequence(oid(OID.sha256))]), sequence(oid(OID.data)),
    tagged(0, [certificate.toSchema()]), asSet([signer]),
  )
  return new Uint8Array(sequence(oid(OID.signedData), tagged(0, [signedData])).toBER())
}

/** r ‖ s as WebCrypto gives it, as the DER sequence that CMS wants. */
function ecdsaToDer(raw: Bytes): Bytes {
  const half = raw.length / 2
  const number = (bytes: Bytes): asn1.Integer => asn1.Integer.fromBigInt(BigInt(`0x${Buffer.from(bytes).toString('hex')}`))
  return new Uint8Array(sequence(number(raw.subarray(0, half)), number(raw.subarray(half))).toBER())
}

function sequence(...value: asn1.AsnType[]): asn1.Sequence { return new asn1.Sequence({ value }) }
function asSet(value: asn1.AsnType[]): asn1.Set { return new asn1.Set({ value }) }
function oid(value: string): asn1.ObjectIdentifier { return new asn1.ObjectIdentifier({ value }) }
function attribute(type: string, value: asn1.AsnType): asn1.Sequence { return sequence(oid(type), asSet([value])) }
function tagged(tagNumber: number, value: asn1.AsnType[]): asn1.Constructed { return new asn1.Constructed({ idBlock: { tagClass: 3, tagNumber }, value }) }
