import canonicalize from 'canonicalize'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { canonicalJson } from '../../../core/ledger/index.ts'

/** RFC 8785 Appendix B: bits of a double and its text. */
const APPENDIX_B: readonly (readonly [bits: string, text: string])[] = [
  ['0000000000000000', '0'], ['8000000000000000', '0'], ['0000000000000001', '5e-324'], ['8000000000000001', '-5e-324'],
  ['7fefffffffffffff', '1.7976931348623157e+308'], ['ffefffffffffffff', '-1.7976931348623157e+308'],
  ['4340000000000000', '9007199254740992'], ['c340000000000000', '-9007199254740992'], ['4430000000000000', '295147905179352830000'],
  ['44b52d02c7e14af5', '9.999999999999997e+22'], ['44b52d02c7e14af6', '1e+23'], ['44b52d02c7e14af7', '1.0000000000000001e+23'],
  ['444b1ae4d6e2ef4e', '999999999999999700000'], ['444b1ae4d6e2ef4f', '999999999999999900000'], ['444b1ae4d6e2ef50', '1e+21'],
  ['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'], ['3eb0c6f7a0b5ed8d', '0.000001'],
  ['41b3de4355555553', '333333333.3333332'], ['41b3de4355555554', '333333333.33333325'], ['41b3de4355555555', '333333333.3333333'],
  ['41b3de4355555556', '333333333.3333334'], ['41b3de4355555557', '333333333.33333343'],
  ['becbf647612f3696', '-0.0000033333333333333333'], ['43143ff3c1cb0959', '1424953923781206.2'],
]

function double(bits: string): number {
  return Buffer.from(bits, 'hex').readDoubleBE(0)
}

describe('canonical JSON, against RFC 8785', () => {
  it.each(APPENDIX_B)('Appendix B: the double %s is written %s', (bits, text) => {
    expect(canonicalJson(double(bits))).toBe(text)
  })

  it('3.2.2: the sample with numbers, a string and literals', () => {
    const sample = { numbers: [333333333.33333329, 1e30, 4.5, 2e-3, 0.000000000000000000000000001], string: '\u20ac$\u000F\u000aA\'\u0042\u0022\u005c\\"/', literals: [null, true, false] }
    expect(canonicalJson(sample)).toBe('{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}')
  })

  it('3.2.3: keys are sorted by their UTF-16 code units', () => {
    const sample = {
      '\u20ac': 'Euro Sign', '\r': 'Carriage Return', '\ufb33': 'Hebrew Letter Dalet With Dagesh', 1: 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face', '\u0080': 'Control', '\u00f6': 'Latin Small Letter O With Diaeresis',
    }
    expect(canonicalJson(sample)).toBe(
      '{"\\r":"Carriage Return","1":"One","\u0080":"Control","\u00f6":"Latin Small Letter O With Diaeresis","\u20ac":"Euro Sign",'
      + '"\ud83d\ude00":"Emoji: Grinning Face","\ufb33":"Hebrew Letter Dalet With Dagesh"}',
    )
  })
})

describe('canonical JSON, against another program', () => {
  it('is what the package canonicalize writes, whatever the data', () => {
    const odd = fc.oneof(fc.string({ unit: 'binary' }), fc.string({ unit: 'grapheme' }), fc.constantFrom('__proto__', 'constructor', '', '"', '\\', '\u2028', '\u007f', '\uFEFF'))
    const value = fc.anything({ key: odd, values: [odd, fc.double({ noNaN: true, noDefaultInfinity: true }), fc.integer(), fc.boolean(), fc.constant(null)], maxKeys: 40, withNullPrototype: true })
    fc.assert(fc.property(value, (one) => { expect(canonicalJson(one)).toBe(canonicalize(one)) }), { numRuns: 3000 })
  })
})

describe('what has no canonical JSON is refused, and its place named', () => {
  const circle: Record<string, unknown> = {}
  circle['again'] = { circle }

  it.each<[string, unknown, string]>([
    ['undefined', undefined, '$ is of type undefined'],
    ['an absent member', { ticket: { remarks: undefined } }, '$.ticket.remarks is of type undefined'],
    ['a hole in a list', [1, undefined], '$[1] is of type undefined'],
    ['NaN', { nsv: [Number.NaN] }, '$.nsv[0] is NaN'],
    ['infinity', { a: Number.NEGATIVE_INFINITY }, '$.a is -Infinity'],
    ['a bigint', { seq: 1n }, '$.seq is of type bigint'],
    ['a function', { f: () => 1 }, '$.f is of type function'],
    ['a date', { at: new Date(0) }, '$.at is not a plain object'],
    ['a map', new Map(), '$ is not a plain object'],
    ['a circle', circle, 'contains itself'],
    ['half a surrogate pair', '\ud83d', 'surrogate'],
  ])('%s', (_, value, message) => {
    expect(() => canonicalJson(value)).toThrow(message)
  })

  it('the same object in two places is no circle', () => {
    const quantity = { value: '1.000', unit: 'm3' }
    expect(canonicalJson({ gsv: quantity, nsv: quantity })).toBe('{"gsv":{"unit":"m3","value":"1.000"},"nsv":{"unit":"m3","value":"1.000"}}')
  })
})
