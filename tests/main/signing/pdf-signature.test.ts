import { X509Certificate } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ticketDocument } from '../../../main/documents/ticket.ts'
import { signDocument, type ProtectedIdentity } from '../../../main/signing/index.ts'
import { hasProgram, run, scratch } from '../../support/outside-programs.ts'
import { aBasis, aPair, aTicket, signedBy, signersOf, type Pair } from '../../support/ticket.ts'

const files = scratch()
afterAll(files.done)
let pair: Pair
let unsigned: Uint8Array
let once: Uint8Array
let twice: Uint8Array
beforeAll(async () => {
  pair = await aPair()
  unsigned = await ticketDocument(aTicket(signersOf(pair)), aBasis())
  once = await signedBy(unsigned, pair.first, 'signature-1', 'terminal')
  twice = await signedBy(once, pair.second, 'signature-2', 'counterparty')
})

describe('two signatures in succession', () => {
  it('leave what was signed before byte for byte as it was', () => {
    expect(Buffer.from(once.subarray(0, unsigned.length)).equals(unsigned)).toBe(true)
    expect(Buffer.from(twice.subarray(0, once.length)).equals(once)).toBe(true)
  })

  it('are both valid for pdfsig, the second over the whole document', () => {
    const said = run('pdfsig', '-nocert', files.put('twice.pdf', twice)).out
    const [first = '', second = ''] = said.split('Signature #2')
    expect(first).toContain('Signature is Valid')
    expect(first).toContain('Not total document signed')
    expect(second).toContain('Signature is Valid')
    expect(second).toContain('  - Total document signed')
    expect(said.match(/ETSI\.CAdES\.detached/g)).toHaveLength(2)
    expect(said).toContain('Signer Certificate Common Name: João Reis')
    expect(said.match(/Signing Time: Mar 14 2026 19:05:00/g)).toHaveLength(2)
  })

  it('leave a file that qpdf finds nothing wrong with', () => {
    const said = run('qpdf', '--check', files.put('checked.pdf', twice))
    expect(said.code).toBe(0)
    expect(said.out).toContain('No syntax or stream encoding errors found')
    expect(said.out).not.toContain('WARNING')
  })

  it('keep what makes the file a PDF/A-3: identifier, metadata, output intent, associated files', () => {
    const text = Buffer.from(twice).toString('latin1')
    expect(text.match(/\/ID \[<[0-9a-f]{32}> <[0-9a-f]{32}>\]/g)).toHaveLength(3)
    for (const part of ['<pdfaid:part>3</pdfaid:part>', '/OutputIntents', '/AF [']) expect(text).toContain(part)
  })

  // CAdES-B as ETSI EN 319 122-1 has it: OpenSSL demands the signing certificate's hash with -cades.
  it.skipIf(!hasProgram('openssl', 'version', 'CAdES verification by OpenSSL'))('are CAdES signatures for OpenSSL', () => {
    const parts = [[1, pair.first], [2, pair.second]] as const
    for (const [place, who] of parts) {
      const { cms, content } = extracted(twice, place)
      const said = run('openssl', 'cms', '-verify', '-inform', 'DER', '-in', files.put('s.der', cms), '-content', files.put('s.bin', content), '-binary',
        '-CAfile', files.put('s.pem', pemOf(who)), '-cades', '-purpose', 'any', '-no_check_time', '-out', files.path('out'))
      expect(said.out).toContain('CAdES Verification successful')
    }
  })

  it('refuse to be put on something that is not one of our documents', async () => {
    const as = { key: await crypto.subtle.generateKey({ name: 'ECDSA', namedCurve: 'P-256' }, false, ['sign', 'verify']).then((pair) => pair.privateKey), identity: pair.first.identity, field: 'a', at: '2026-03-14T19:05:00Z', role: 'terminal' } as const
    for (const text of ['', 'not a PDF', '%PDF-1.7\nstartxref\n99\n%%EOF\n']) await expect(signDocument(new TextEncoder().encode(text), as)).rejects.toThrow()
  })
})

/** The bytes of the n-th signature and what it signs, cut out by its byte range. */
function extracted(pdf: Uint8Array, place: number): { readonly cms: Uint8Array; readonly content: Uint8Array } {
  const found = [...Buffer.from(pdf).toString('latin1').matchAll(/\/ByteRange \[(\d+) (\d+) (\d+) (\d+) *\]/g)][place - 1]
  const [, start = 0, length = 0, after = 0, rest = 0] = (found ?? []).map(Number)
  const filled = Buffer.from(Buffer.from(pdf.subarray(length + 1, after - 1)).toString('latin1'), 'hex')
  // A DER sequence of 256 to 65535 bytes: 30 82, two bytes of length, contents; the rest is filling.
  return { cms: filled.subarray(0, 4 + filled.readUInt16BE(2)), content: Buffer.concat([pdf.subarray(start, length), pdf.subarray(after, after + rest)]) }
}

function pemOf({ identity }: ProtectedIdentity): string {
  return new X509Certificate(Buffer.from(identity.certificate, 'base64')).toString()
}
