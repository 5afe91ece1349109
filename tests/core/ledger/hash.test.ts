import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { sha256Hex, versionHash } from '../../../core/ledger/index.ts'

describe('SHA-256', () => {
  // FIPS 180-4: the examples published with the standard (one block, two blocks), and the empty message.
  it.each([
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    ['abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq', '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1'],
  ])('of “%s”', (message, digest) => {
    expect(sha256Hex(message)).toBe(digest)
    expect(sha256Hex(new TextEncoder().encode(message))).toBe(digest)
  })

  it('agrees with the one of Node for every length around the block size', () => {
    for (let length = 0; length <= 260; length += 1) {
      const bytes = Uint8Array.from({ length }, (_, i) => (i * 37) % 256)
      expect(sha256Hex(bytes)).toBe(createHash('sha256').update(bytes).digest('hex'))
    }
  })
})

describe('the hash of a version', () => {
  it('is the SHA-256 of its canonical text, whatever the order of its members', () => {
    const text = '{"code":"T-101","name":"Tank 101"}'
    expect(versionHash({ name: 'Tank 101', code: 'T-101' })).toBe(createHash('sha256').update(text).digest('hex'))
  })
})
