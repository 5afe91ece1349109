import { readFileSync } from 'node:fs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { importIdentity, makeKeyRing, readSignatures, signDocument } from '../../../main/signing/index.ts'
import { hasProgram, run, scratch } from '../../support/outside-programs.ts'
import { refusalOf, codesOf } from '../../support/refusals.ts'
import { aPair, aSignedTicket, signedBy, TEST_COST, TEST_PASSPHRASE } from '../../support/ticket.ts'

const FILE_PASSPHRASE = 'file passphrase'
const files = scratch()
afterAll(files.done)

/** A PKCS #12 file made by OpenSSL with its present defaults (AES-256, PBKDF2, SHA-256). */
function p12(name: string, key: readonly string[], days = '3650'): Uint8Array {
  const [pem, certificate, out] = [files.path(`${name}.key`), files.path(`${name}.crt`), files.path(`${name}.p12`)]
  const steps = [
    ['req', '-x509', '-nodes', ...key, '-keyout', pem, '-out', certificate, '-days', days, '-subj', '/O=Northbank Supply/CN=Rui Figueira', '-utf8'],
    ['pkcs12', '-export', '-inkey', pem, '-in', certificate, '-out', out, '-passout', `pass:${FILE_PASSPHRASE}`],
  ]
  for (const step of steps) {
    const said = run('openssl', ...step)
    if (said.code !== 0) throw new Error(said.out)
  }
  return new Uint8Array(readFileSync(out))
}

const there = hasProgram('openssl', 'version', 'PKCS #12 files as OpenSSL makes them')

describe.skipIf(!there)('a PKCS #12 file', () => {
  // A minute on: a certificate begins at the second in which it is made.
  const today = new Date(Date.now() + 60_000).toISOString()
  const wanted = { id: 'rui-figueira', party: 'NORTHBANK', filePassphrase: FILE_PASSPHRASE, passphrase: TEST_PASSPHRASE, at: today, cost: TEST_COST }
  let rsa: Uint8Array
  let ecdsa: Uint8Array
  beforeAll(() => {
    rsa = p12('rsa', ['-newkey', 'rsa:3072'])
    ecdsa = p12('ecdsa', ['-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-256'])
  })

  it.each(['rsa', 'ecdsa'])('with a key of kind %s gives an identity that signs', async (kind) => {
    const { identity, protectedKey } = await importIdentity({ ...wanted, file: kind === 'rsa' ? rsa : ecdsa })
    expect(identity).toMatchObject({ id: 'rui-figueira', name: 'Rui Figueira', party: 'NORTHBANK' })
    const key = await makeKeyRing().open(identity, protectedKey, TEST_PASSPHRASE, 'passphrase')
    const pair = await aPair()
    const signed = await signDocument(await signedOnce(pair), { key, identity, field: 'signature-2', at: today, role: 'counterparty' })
    const reading = await readSignatures(signed)
    expect([reading.problems, ...reading.signatures.map((one) => one.problems)]).toEqual([[], [], []])
    expect(reading.signatures[1]?.certificate).toBe(identity.fingerprint)
    expect(run('pdfsig', '-nocert', files.put('signed.pdf', signed)).out.match(/Signature is Valid/g)).toHaveLength(2)
  })

  it('is refused with the wrong passphrase', async () => {
    for (const file of [rsa, ecdsa]) expect(codesOf(await refusalOf(importIdentity({ ...wanted, file, filePassphrase: 'wrong' })))).toEqual(['passphrase-wrong'])
  })

  it('is refused when it is none, is cut short, or holds a curve that no ticket is signed with', async () => {
    const curve = p12('p521', ['-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-521'])
    for (const file of [new Uint8Array(), new TextEncoder().encode('not a key file'), rsa.subarray(0, 900), new Uint8Array(2_000_000), curve]) {
      expect(codesOf(await refusalOf(importIdentity({ ...wanted, file })))).toEqual(['identity-file-unreadable'])
    }
  })

  it('is refused when its certificate has expired, and names everything that is wrong at once', async () => {
    expect(codesOf(await refusalOf(importIdentity({ ...wanted, file: ecdsa, at: '2090-01-01T00:00:00Z' })))).toEqual(['certificate-not-valid'])
    expect(codesOf(await refusalOf(importIdentity({ ...wanted, file: ecdsa, passphrase: 'short', filePassphrase: 'wrong' })))).toEqual(['passphrase-too-short', 'passphrase-wrong'])
  })
})

async function signedOnce(pair: Awaited<ReturnType<typeof aPair>>): Promise<Uint8Array> {
  const whole = await aSignedTicket(pair)
  const { unsigned } = await readSignatures(whole)
  return signedBy(unsigned.bytes, pair.first, 'signature-1', 'terminal')
}
