import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { discriminate, DISCRIMINATION, display, type Discriminated } from '../../../core/rounding/index.ts'
import { SOURCES, sourceKeyOf } from '../../../core/sources.ts'
import { Decimal } from '../../../core/units/index.ts'

const QUANTITIES = Object.keys(DISCRIMINATION) as readonly Discriminated[]

describe('a half is rounded away from zero', () => {
  // "a digit of 5 or more rounds up": row ROUND-API-RULE of the collected values for API MPMS 12.1.1; the sign changes nothing
  it.each([
    ['density degAPI', '31.45', '31.5'], ['density degAPI', '31.449999', '31.4'], ['density degAPI', '-0.05', '-0.1'], ['density degAPI', '-0.04', '0.0'],
    ['volume bbl', '17181.405', '17181.41'], ['volume bbl', '-17181.405', '-17181.41'], ['volume bbl', '0.0049999', '0.00'],
    ['CTL', '0.987135', '0.98714'], ['CTL', '0.9871349999999999', '0.98713'],
    ['TSh degF', '87.5', '88'], ['TSh degC', '30.25', '30.5'], ['TSh degC', '30.24', '30.0'], ['temperature degC', '31.225', '31.25'],
    ['volume m3', '1250.0005', '1250.001'], ['mass kg', '551100.5', '551101'],
  ] as const)('%s %s becomes %s', (quantity, exact, rounded) => {
    expect(discriminate(quantity, new Decimal(exact)).text).toBe(rounded)
  })

  it('a double is rounded by the digits it is printed with: 1.005 is a half', () => {
    expect(discriminate('volume bbl', 1.005).text).toBe('1.01')
  })
})

describe('discriminate', () => {
  it('keeps all digits of what was rounded, and names the rule and its clause', () => {
    expect(discriminate('CTPL', 0.9871299060494295)).toMatchObject({
      text: '0.98713', unrounded: '0.9871299060494295', rule: '0.00001, half away from zero', clause: 'MPMS-11.1-2004 11.1.5.4',
    })
  })

  it('writes small numbers out', () => {
    expect(discriminate('alpha60 /degF', 4.5295800677805966e-4)).toMatchObject({ text: '0.0004530', unrounded: '0.00045295800677805966' })
  })

  it.each(QUANTITIES)('%s: a multiple of its increment, within half of it, and rounding again changes nothing', (quantity) => {
    const increment = new Decimal(DISCRIMINATION[quantity].increment)
    fc.assert(fc.property(fc.integer({ min: -1_000_000_000, max: 1_000_000_000 }), fc.integer({ min: 1, max: 9_999 }), (many, over) => {
      const exact = increment.times(many).div(over)
      const { value, text } = discriminate(quantity, exact)
      expect(value.div(increment).isInteger()).toBe(true)
      expect(value.minus(exact).abs().lte(increment.div(2))).toBe(true)
      expect(new Decimal(text).equals(value)).toBe(true)
      expect(discriminate(quantity, value).text).toBe(text)
      expect(text).not.toMatch(/^-0(\.0*)?$/)
    }), { seed: 20260404, numRuns: 200 })
  })

  it('does not round what is not a number: that is a fault, not a zero', () => {
    expect(() => discriminate('CTL', Number.NaN)).toThrow('CTL')
    expect(() => discriminate('volume bbl', Number.POSITIVE_INFINITY)).toThrow('volume bbl')
  })
})

describe('the table', () => {
  it.each(QUANTITIES)('%s: an increment of 1, 2 or 5 at some place, or a half, quarter or eighth of an inch, and a known source', (quantity) => {
    const { increment, clause } = DISCRIMINATION[quantity]
    expect(increment).toMatch(quantity.endsWith(' in') ? /^(?:(?:0\.0*)?[125]|0\.25|0\.125)$/ : /^(?:0\.0*)?[125]$/)
    expect(SOURCES).toHaveProperty([sourceKeyOf(clause)])
  })
})

describe('display', () => {
  it('is for eyes only, with a half away from zero', () => {
    expect([display(2.345, 2), display(-2.345, 2), display(100.011, 1)]).toEqual(['2.35', '-2.35', '100.0'])
  })
})
