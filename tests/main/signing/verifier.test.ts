import { scryptSync } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { derived, PASSPHRASE_COST } from '../../../main/signing/derive.ts'
import { passphraseFits, verifierOf } from '../../../main/signing/verifier.ts'

const CHEAP = 2 ** 10
const WORDS = 'seven herons over the weir'

describe('the derived bytes', () => {
  it('are those that RFC 7914 section 12 prints for N 1024 with r 8, p 16 and for N 16384 with p 1', () => {
    // the printed vectors hold the function that is used; its p and length differ, so they are asked for directly
    expect(scryptSync('password', 'NaCl', 64, { N: 1024, r: 8, p: 16, maxmem: 2 ** 26 }).toString('hex').slice(0, 32)).toBe('fdbabe1c9d3472007856e7190d01e9fe')
    expect(scryptSync('pleaseletmein', 'SodiumChloride', 64, { N: 16384, r: 8, p: 1, maxmem: 2 ** 26 }).toString('hex').slice(0, 32)).toBe('7023bdcb3afd7348461c06cd81fd38eb')
  })

  it('are the first 32 bytes of the printed ones, since scrypt ends in one PBKDF2 whose blocks do not depend on its length', async () => {
    expect((await derived('pleaseletmein', Buffer.from('SodiumChloride'), 16384)).toString('hex')).toBe('7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2')
  })
})

describe('a verifier', () => {
  it('tells the passphrase, in whatever form its letters are written, from any other', async () => {
    const kept = await verifierOf('garça na maré de março', CHEAP)
    expect(await passphraseFits(kept, 'garça na maré de março')).toBe(true)
    expect(await passphraseFits(kept, 'garça na maré de março'.normalize('NFD'))).toBe(true)
    expect(await passphraseFits(kept, 'garca na mare de marco')).toBe(false)
    expect(await passphraseFits(kept, '')).toBe(false)
  })

  it('holds nothing of the passphrase and is another one each time', async () => {
    const [one, two] = [await verifierOf(WORDS, CHEAP), await verifierOf(WORDS, CHEAP)]
    expect(one).not.toBe(two)
    expect(one).not.toContain('heron')
  })

  it('costs what keys cost, unless a cost is given', async () => {
    expect(JSON.parse(await verifierOf(WORDS)).N).toBe(PASSPHRASE_COST)
  })

  it('that is missing or damaged fits nothing', async () => {
    expect(await passphraseFits(undefined, WORDS, CHEAP)).toBe(false)
    expect(await passphraseFits('{"form":', WORDS, CHEAP)).toBe(false)
    const kept = JSON.parse(await verifierOf(WORDS, CHEAP)) as { digest: string }
    expect(await passphraseFits(JSON.stringify({ ...kept, digest: '' }), WORDS, CHEAP)).toBe(false)
  })
})
