import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { shareOut, type Discriminated } from '../../../core/rounding/index.ts'
import { Decimal } from '../../../core/units/index.ts'

const decimals = (...texts: readonly string[]): readonly Decimal[] => texts.map((text) => new Decimal(text))
const texts = (quantity: Discriminated, total: string, ...weights: readonly string[]): readonly string[] => shareOut(quantity, new Decimal(total), decimals(...weights)).map(({ text }) => text)

describe('shares by the largest remainder', () => {
  it('three equal owners of a litre: the first gets the step that is left over', () => {
    expect(texts('volume m3', '0.001', '1', '1', '1')).toEqual(['0.001', '0.000', '0.000'])
    expect(texts('volume m3', '-1.000', '5', '5', '5')).toEqual(['-0.334', '-0.333', '-0.333'])
  })

  // Hamilton's method, worked by hand: 100 steps by 41 : 38 : 21 over 100 → 41, 38, 21; 10 steps → 4.1, 3.8, 2.1 → 4, 3 + 1, 2
  it('gives what is left over to the largest remainders', () => {
    expect(texts('volume bbl', '0.10', '41', '38', '21')).toEqual(['0.04', '0.04', '0.02'])
    expect(texts('volume bbl', '-0.10', '41', '38', '21')).toEqual(['-0.04', '-0.04', '-0.02'])
  })

  // −3.217 m³ by stocks of 1200.500, 799.500 and 500.000: −1.54480…, −1.02879…, −0.6434 → −1.544, −1.028, −0.643 leave 2 steps
  it('a loss by stocks', () => {
    expect(texts('volume m3', '-3.217', '1200.500', '799.500', '500.000')).toEqual(['-1.545', '-1.029', '-0.643'])
    expect(shareOut('volume m3', new Decimal('-3.217'), decimals('1200.500', '799.500', '500.000'))[2]?.unrounded).toBe('-0.6434')
  })

  it('always adds up, with no share a step away from its quota', () => {
    fc.assert(fc.property(fc.integer({ min: -1e9, max: 1e9 }), fc.array(fc.integer({ min: 0, max: 1e9 }), { minLength: 1, maxLength: 20 }).filter((all) => all.some((one) => one > 0)), (steps, weights) => {
      const total = new Decimal(steps).div(1000)
      const shares = shareOut('volume m3', total, weights.map((weight) => new Decimal(weight)))
      expect(shares.reduce((sum, { value }) => sum.plus(value), new Decimal(0)).eq(total)).toBe(true)
      for (const [i, { value, unrounded }] of shares.entries()) {
        expect(value.minus(unrounded).abs().lessThan('0.001')).toBe(true)
        if (weights[i] === 0) expect(value.isZero()).toBe(true)
      }
    }))
  })

  it('throws on what no shares can add up to', () => {
    expect(() => texts('volume m3', '0.0005', '1')).toThrow(/cannot be shared out/)
    expect(() => texts('volume m3', '1.000', '0', '0')).toThrow(/cannot be shared out/)
    expect(() => texts('volume m3', '1.000', '2', '-1')).toThrow(/cannot be shared out/)
  })
})
