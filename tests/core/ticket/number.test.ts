import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { numberOf, ticketNumber } from '../../../core/ticket/index.ts'

describe('ticket numbers', () => {
  it.each([['CPT', 1, 'CPT-000001'], ['CPT', 999_999, 'CPT-999999'], ['CPT', 1_000_000, 'CPT-1000000'], ['P2', 42, 'P2-000042']])('of %s, the ticket %d is %s', (code, n, text) => {
    expect(ticketNumber(code, n)).toBe(text)
    expect(numberOf(text)).toEqual({ terminalCode: code, n })
  })

  it('are read as they are written, for any count', () => {
    fc.assert(fc.property(fc.integer({ min: 1, max: 10 ** 12 }), (n) => {
      expect(numberOf(ticketNumber('CPT', n))).toEqual({ terminalCode: 'CPT', n })
    }), { seed: 7, numRuns: 200 })
  })

  it.each(['', 'CPT', 'CPT-1', 'CPT-00001', 'CPT-0000001', 'CPT-000000', 'cpt-000001', 'CPT-00000A', 'CPT 000001', 'CPT-000001 ', 'CPT--00001'])('“%s” is not one', (text) => {
    expect(numberOf(text)).toBeUndefined()
  })

  it.each([0, -1, 1.5, Number.NaN, 2 ** 60])('there is no ticket %d', (n) => {
    expect(() => ticketNumber('CPT', n)).toThrow('cannot be the number')
  })
})
