import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Decimal, lengthFromMillimetres, millimetres, parseLength, printLength } from '../../../core/units/index.ts'
import { codesOf } from '../../support/refusals.ts'
import { must } from '../../support/must.ts'

const read = (text: string) => must(parseLength(text, 'level'))

describe('feet, inches and fractions', () => {
  // inches by hand: 41 × 12 + 3 + 5/8 = 495.625
  it.each([
    ['41 ft 3 5/8 in', '495.625', '41 ft 3 5/8 in'],
    ['41ft 3-5/8in', '495.625', '41 ft 3 5/8 in'],
    [`41' 3 5/8"`, '495.625', '41 ft 3 5/8 in'],
    [`41'-3 5/8"`, '495.625', '41 ft 3 5/8 in'],
    ['41′ 3 5/8″', '495.625', '41 ft 3 5/8 in'],
    ['41 feet 3.625 inches', '495.625', '41 ft 3 5/8 in'],
    ['41 ft 0 in', '492', '41 ft 0 in'],
    ['41 ft 15/16 in', '492.9375', '41 ft 0 15/16 in'],
    ['41 ft 1 5/16 in', '493.3125', '41 ft 1 5/16 in'],
    ['0 ft 11 63/64 in', '11.984375', '0 ft 11 63/64 in'],
    ['41 ft 3 4/8 in', '495.5', '41 ft 3 1/2 in'],
    ['5/8 in', '0.625', '0 ft 0 5/8 in'],
    ['1 1/2 in', '1.5', '0 ft 1 1/2 in'],
    ['17 1/4 in', '17.25', '1 ft 5 1/4 in'],
    ['-1 ft 2 1/2 in', '-14.5', '-1 ft 2 1/2 in'],
    ['41 ft 3.1 in', '495.1', '495.1 in'],
  ])('%s is %s in, printed %s', (text, inches, printed) => {
    const length = read(text)
    expect(length.unit).toBe('ft-in')
    expect(length.value.toFixed()).toBe(inches)
    expect(length.text).toBe(text)
    expect(printLength(length)).toBe(printed)
  })

  it.each([
    '41 ft 35/8 in', '41 ft 3 8/8 in', '41 ft 3 5/7 in', '41 ft 3 1/128 in', '41 ft 3 5/0 in', '41 ft 12 in', '41 ft 12.5 in', '0 ft 13 in', '41 ft 3.5 5/8 in', '41 ft 3',
    '41 ft 3 in 5', '4 m 5 cm', '41-42 ft', '12.5.3 m', '1e3 mm', '12,345 m', '8 421 mm', '41 ft -3 in', '',
  ])('“%s” cannot be read', (text) => {
    expect(codesOf(parseLength(text, 'level'))).toEqual(['unreadable-value'])
  })

  it.each(['41 ft in', '5/8', '12.5 yd'])('“%s” has no unit of length', (text) => {
    expect(codesOf(parseLength(text, 'level'))).toEqual(['unit-not-accepted'])
  })

  it('every sixty-fourth of an inch up to 100 ft is printed and read back as the same text and value', () => {
    fc.assert(fc.property(fc.integer({ min: 0, max: 100 * 12 * 64 }), (sixtyFourths) => {
      const inches = new Decimal(sixtyFourths).div(64)
      const text = printLength({ text: '', value: inches, unit: 'ft-in' })
      expect(read(text).value.equals(inches)).toBe(true)
      expect(printLength(read(text))).toBe(text)
    }), { seed: 20260403, numRuns: 2000 })
  })
})

describe('millimetres', () => {
  // NIST Handbook 44, Appendix C: 1 in = 25.4 mm, 1 ft = 304.8 mm, exactly
  it.each([
    ['12.345 m', '12345'], ['1234.5 cm', '12345'], ['12345 mm', '12345'], ['1 in', '25.4'], ['1 ft', '304.8'], ['41 ft 3 5/8 in', '12588.875'], ['1/64 in', '0.396875'],
  ])('%s are %s mm', (text, mm) => {
    expect(millimetres(read(text)).toFixed()).toBe(mm)
  })

  it('become a length in the unit that is wanted', () => {
    expect(lengthFromMillimetres(new Decimal('12588.875'), 'ft-in').text).toBe('41 ft 3 5/8 in')
    expect(lengthFromMillimetres(new Decimal('12345'), 'm').text).toBe('12.345 m')
  })
})
