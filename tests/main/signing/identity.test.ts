import { createPrivateKey, createPublicKey, X509Certificate } from 'node:crypto'
import { beforeAll, describe, expect, it } from 'vitest'
import { createIdentity, makeKeyRing, type ProtectedIdentity } from '../../../main/signing/index.ts'
import { PASSPHRASE_COST } from '../../../main/signing/derive.ts'
import { openKey, sealKey } from '../../../main/signing/vault.ts'
import { hasProgram, run, scratch } from '../../support/outside-programs.ts'
import { anIdentity, TEST_COST, TEST_PASSPHRASE } from '../../support/ticket.ts'
import { codesOf, refusalOf } from '../../support/refusals.ts'

let ana: ProtectedIdentity
beforeAll(async () => { ana = await anIdentity('ana-duarte', 'Ana Duarte, São Julião', 'CALDER') })

describe('a new identity', () => {
  it('has a certificate of its own for signatures that bind, valid three years', () => {
    const certificate = new X509Certificate(Buffer.from(ana.identity.certificate, 'base64'))
    expect(certificate.verify(certificate.publicKey)).toBe(true)
    expect(certificate.subject).toContain('São Julião')
    expect([ana.identity.notBefore, ana.identity.notAfter]).toEqual(['2026-01-01T00:00:00Z', '2029-01-01T00:00:00Z'])
    expect(ana.identity.fingerprint).toBe(certificate.fingerprint256.replaceAll(':', '').toLowerCase())
  })

  // Key usage as RFC 5280 4.2.1.3 has it: digitalSignature and nonRepudiation.
  it.skipIf(!hasProgram('openssl', 'version', 'key usage of certificates as OpenSSL reads it'))('is read by OpenSSL with the key usage of a signer', () => {
    const files = scratch()
    const path = files.put('ana.der', Buffer.from(ana.identity.certificate, 'base64'))
    const said = run('openssl', 'x509', '-inform', 'DER', '-in', path, '-noout', '-text').out
    files.done()
    expect(said).toMatch(/X509v3 Key Usage: critical\s+Digital Signature, Non Repudiation/)
    expect(said).toContain('ASN1 OID: prime256v1')
  })

  it('refuses a passphrase of nine characters and takes one of ten, counted as people count', async () => {
    const wanted = { id: 'x', name: 'X', party: 'P', at: '2026-01-01T00:00:00Z', cost: TEST_COST }
    expect(codesOf(await refusalOf(createIdentity({ ...wanted, passphrase: 'nine char' })))).toEqual(['passphrase-too-short'])
    expect(codesOf(await refusalOf(createIdentity({ ...wanted, passphrase: '⚓⚓⚓⚓⚓⚓⚓⚓⚓' })))).toEqual(['passphrase-too-short'])
    await expect(createIdentity({ ...wanted, passphrase: 'ten chars!' })).resolves.toBeDefined()
  })
})

describe('a protected key', () => {
  const key = new Uint8Array([1, 2, 3, 4])

  it('opens with its passphrase, however the accents were typed, and with no other', async () => {
    const sealed = await sealKey(key, 'ana', 'maré baixa no cais', TEST_COST)
    expect(await openKey(sealed, 'ana', 'mare\u0301 baixa no cais', 'passphrase')).toEqual({ ok: true, value: key })
    expect(codesOf(await openKey(sealed, 'ana', 'mare baixa no cais', 'passphrase'))).toEqual(['passphrase-wrong'])
  })

  it('does not open under another identity, nor after any change to it', async () => {
    const sealed = await sealKey(key, 'ana', TEST_PASSPHRASE, TEST_COST)
    expect(codesOf(await openKey(sealed, 'ben', TEST_PASSPHRASE, 'passphrase'))).toEqual(['passphrase-wrong'])
    const parts = JSON.parse(sealed)
    for (const part of ['salt', 'nonce', 'tag', 'sealed']) {
      const changed = Buffer.from(parts[part], 'base64')
      changed[0]! ^= 1
      const altered = JSON.stringify({ ...parts, [part]: changed.toString('base64') })
      expect(codesOf(await openKey(altered, 'ana', TEST_PASSPHRASE, 'passphrase'))).toEqual(['passphrase-wrong'])
    }
    for (const broken of ['', '{}', sealed.slice(0, -1), JSON.stringify({ ...parts, N: 2 ** 30 }), JSON.stringify({ ...parts, N: 3000 })]) {
      expect(codesOf(await openKey(broken, 'ana', TEST_PASSPHRASE, 'passphrase'))).toEqual(['ledger-damaged'])
    }
  })

  it('is sealed at the full cost unless told otherwise, and says its cost', async () => {
    expect(JSON.parse(await sealKey(key, 'ana', TEST_PASSPHRASE)).N).toBe(PASSPHRASE_COST)
    expect(PASSPHRASE_COST).toBe(131072)
    expect(JSON.parse(ana.protectedKey).N).toBe(TEST_COST)
  })
})

describe('the key ring', () => {
  it('gives a key that signs for the certificate and can never be read out', async () => {
    const key = await makeKeyRing().open(ana.identity, ana.protectedKey, TEST_PASSPHRASE, 'passphrase')
    expect([key.type, key.extractable, key.usages]).toEqual(['private', false, ['sign']])
    const opened = await openKey(ana.protectedKey, 'ana-duarte', TEST_PASSPHRASE, 'passphrase')
    if (!opened.ok) throw new Error('not opened')
    const own = createPublicKey(createPrivateKey({ key: Buffer.from(opened.value), format: 'der', type: 'pkcs8' }))
    expect(own.equals(new X509Certificate(Buffer.from(ana.identity.certificate, 'base64')).publicKey)).toBe(true)
  })

  it('keeps a key open for its passphrase and for no other', async () => {
    const ring = makeKeyRing()
    const first = await ring.open(ana.identity, ana.protectedKey, TEST_PASSPHRASE, 'signers.0.passphrase')
    expect(await ring.open(ana.identity, ana.protectedKey, TEST_PASSPHRASE, 'signers.0.passphrase')).toBe(first)
    const refusal = await refusalOf(ring.open(ana.identity, ana.protectedKey, 'some other passphrase', 'signers.0.passphrase'))
    expect(refusal).toMatchObject([{ code: 'passphrase-wrong', path: 'signers.0.passphrase', value: 'ana-duarte' }])
  })
})

