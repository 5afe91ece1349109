import { beforeAll, describe, expect, it } from 'vitest'
import { ticketDocument } from '../../../main/documents/ticket.ts'
import { signCms } from '../../../main/signing/cms.ts'
import { makeKeyRing, readSignatures, type SignaturesReading } from '../../../main/signing/index.ts'
import { signedDigest } from '../../../main/signing/pdf-signature.ts'
import { byteRange, CONTENTS_DIGITS } from '../../../main/signing/signature-increment.ts'
import { codesOf, refusalOf } from '../../support/refusals.ts'
import { aBasis, aPair, aTicket, signedBy, signersOf, TEST_PASSPHRASE, type Pair } from '../../support/ticket.ts'

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

const problemsOf = (reading: SignaturesReading): readonly string[] => [...reading.problems, ...reading.signatures.flatMap((one) => one.problems)]
const latin = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1')
const bytes = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'latin1'))

describe('the signatures of a ticket', () => {
  it('are found with who signed, when, and why', async () => {
    const reading = await readSignatures(twice)
    expect(problemsOf(reading)).toEqual([])
    expect(reading.signatures.map(({ field, name, at, certificate }) => ({ field, name, at, certificate }))).toEqual([
      { field: 'signature-1', name: 'Ana Duarte', at: '2026-03-14T19:05:00Z', certificate: pair.first.identity.fingerprint },
      { field: 'signature-2', name: 'João Reis', at: '2026-03-14T19:05:00Z', certificate: pair.second.identity.fingerprint },
    ])
    expect(Buffer.from(reading.unsigned.bytes).equals(unsigned)).toBe(true)
  })

  it('must be two: none, one and three are not enough or too many', async () => {
    expect(problemsOf(await readSignatures(unsigned))).toContain('there are 0 signatures, not two')
    expect(problemsOf(await readSignatures(once))).toContain('there are 1 signatures, not two')
    expect(problemsOf(await readSignatures(await signedBy(twice, pair.first, 'signature-3', 'inspector')))).toContain('there are 3 signatures, not two')
  })

  it('must be by two certificates', async () => {
    const same = await signedBy(once, pair.first, 'signature-2', 'counterparty')
    expect(problemsOf(await readSignatures(same))).toContain('the same certificate signed twice')
  })

  it('must be made while the certificate was valid', async () => {
    const late = await signedBy(unsigned, pair.first, 'signature-1', 'terminal', '2030-01-01T00:00:00Z')
    expect(problemsOf(await readSignatures(late))).toContain('its certificate was not valid when it was made')
  })
})

describe('what is done to a signed file', () => {
  it('shows when a byte of the first revision is changed: both signatures fail', async () => {
    const changed = latin(twice).replace('/Lang (en-GB)', '/Lang (en-US)')
    const reading = await readSignatures(bytes(changed))
    for (const one of reading.signatures) expect(one.problems).toContain('its signature does not fit the bytes before it')
  })

  it.each(['\n', '%\n', ' ', 'xref\n', '\n%%EOF\n'])('is refused when %j is appended', async (tail) => {
    expect(codesOf(await refusalOf(readSignatures(bytes(latin(twice) + tail))))).toEqual(['document-unreadable'])
  })

  it('shows when a whole revision is appended that is no signature', async () => {
    const text = latin(twice)
    const startxref = /startxref\n(\d+)\n%%EOF\n$/.exec(text)?.[1]
    const size = Number(/\/Size (\d+)\n\/Root (\d+)(?![\s\S]*\/Size)/.exec(text)?.[1])
    const root = /\/Root (\d+)/.exec(text)?.[1]
    const at = text.length
    const object = `${size} 0 obj\n<< /Type /Note >>\nendobj\n`
    const added = `${object}xref\n${size} 1\n${String(at).padStart(10, '0')} 00000 n \ntrailer\n<< /Size ${size + 1} /Root ${root} 0 R /Prev ${startxref} >>\nstartxref\n${at + object.length}\n%%EOF\n`
    expect(problemsOf(await readSignatures(bytes(text + added)))).toEqual(['the file was added to 3 times for 2 signatures'])
  })

  it('is not taken in by a byte range or a signature dictionary that nothing in the form refers to', async () => {
    const decoy = await ticketDocument(aTicket(signersOf(pair), aBasis(), { remarks: '/Type /Sig /ByteRange [0 10 20 30] /Contents <00> /AcroForm << /Fields [] >>' }), aBasis())
    const signed = await signedBy(await signedBy(decoy, pair.first, 'signature-1', 'terminal'), pair.second, 'signature-2', 'counterparty')
    expect(problemsOf(await readSignatures(signed))).toEqual([])
    const forged = latin(once).replace(/\/Fields \[\d+ 0 R\]/, (fields) => fields.replace(/\d/g, '9'))
    expect(codesOf(await refusalOf(readSignatures(bytes(forged))))).toEqual(['document-unreadable'])
  })
})

describe('the last signature, which nothing else covers', () => {
  // Every third digit, so that high and low halves of bytes take turns.
  it('fails at a change of its digits, from the first to the last', async () => {
    const text = latin(twice)
    const from = text.lastIndexOf('/Contents <') + '/Contents <'.length
    const digits = 2 * (4 + Buffer.from(text.slice(from, from + 8), 'hex').readUInt16BE(2))
    expect(digits).toBeGreaterThan(1000)
    const unseen: number[] = []
    for (let place = from; place < from + digits; place += 3) {
      const changed = new Uint8Array(twice)
      const other = parseInt(text[place] ?? '', 16) ^ (place % 2 === 0 ? 1 : 4)
      changed[place] = other.toString(16).charCodeAt(0)
      if (problemsOf(await readSignatures(changed)).length === 0) unseen.push(place - from)
    }
    expect(unseen).toEqual([])
  }, 240_000)
})

describe('a second signer who adds more than a signature', () => {
  // Each is signed anew over the whole file, so that the cryptography is in order; only what was added is not.
  // The changes keep every length, so that the file stays in order and only the comparison can find them.
  it.each([
    ['other flags of the form', (text: string) => text.replace('/SigFlags 3', '/SigFlags 1')],
    ['another content of the page', (text: string) => text.replace(/\/Contents \d(\d*) 0 R\n/, '/Contents 2$1 0 R\n')],
    ['another size of the page', (text: string) => text.replace('/MediaBox [0 0 595.28', '/MediaBox [0 0 095.28')],
    ['a visible field', (text: string) => text.replace('/Rect [0 0 0 0]', '/Rect [0 0 9 9]')],
    ['another page mode', (text: string) => text.replace('/Lang (en-GB)', '/Long (en-GB)')],
  ])('is found out: %s', async (_, alter) => {
    expect(problemsOf(await readSignatures(await resigned(alter)))).toEqual(['something other than this signature was added with it'])
  })

  it('is found out: a comment between objects', async () => {
    const read = readSignatures(await resigned((text) => text.replace('endobj\n', 'endobj\n%seen\n')))
    expect(codesOf(await refusalOf(read))).toEqual(['document-unreadable'])
  })

  /** The second increment changed, and its signature and byte range made again to fit. */
  async function resigned(alter: (increment: string) => string): Promise<Uint8Array> {
    const increment = alter(latin(twice.subarray(once.length)))
    expect(increment).not.toBe(latin(twice.subarray(once.length)))
    const key = await makeKeyRing().open(pair.second.identity, pair.second.protectedKey, TEST_PASSPHRASE, 'passphrase')
    const digitsAt = once.length + increment.indexOf('/Contents <') + '/Contents <'.length
    const end = once.length + increment.length
    const ranged = increment.replace(/\/ByteRange \[[^\]]*\]/, (old) => `/ByteRange [${byteRange(digitsAt, end).join(' ').padEnd(old.length - 13)}]`)
    const whole = Buffer.concat([once, Buffer.from(ranged, 'latin1')])
    const cms = await signCms(signedDigest(whole, digitsAt, end), key, new Uint8Array(Buffer.from(pair.second.identity.certificate, 'base64')))
    whole.write(Buffer.from(cms).toString('hex').padEnd(CONTENTS_DIGITS, '0'), digitsAt, 'latin1')
    return new Uint8Array(whole)
  }
})

describe('a file that is none of ours', () => {
  it.each([
    ['nothing', ''], ['text', 'not a PDF'], ['a bare head', '%PDF-1.7\n'],
    ['a cross-reference chain that bites its tail', '%PDF-1.7\nxref\ntrailer\n<< /Size 1 /Root 1 0 R /Prev 9 >>\nstartxref\n9\n%%EOF\n'],
    ['a root that is not there', '%PDF-1.7\nxref\ntrailer\n<< /Size 1 /Root 1 0 R >>\nstartxref\n9\n%%EOF\n'],
    ['a million brackets', `%PDF-1.7\nxref\ntrailer\n${'['.repeat(1_000_000)}\nstartxref\n9\n%%EOF\n`],
    ['another version of PDF', '%PDF-2.0\nxref\ntrailer\n<< /Size 1 /Root 1 0 R >>\nstartxref\n9\n%%EOF\n'],
  ])('is refused: %s', async (_, text) => {
    expect(codesOf(await refusalOf(readSignatures(bytes(text))))).toEqual(['document-unreadable'])
  })

  it('is refused above 20 MB before anything of it is read', async () => {
    expect(await refusalOf(readSignatures(new Uint8Array(20 * 1024 * 1024 + 1)))).toMatchObject([{ code: 'document-unreadable', path: 'file' }])
  })
})
