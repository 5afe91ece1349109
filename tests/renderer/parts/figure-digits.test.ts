import { describe, expect, it } from 'vitest'
import { figureDigits, signOf } from '../../../renderer/parts/figure-digits.ts'

describe('the digits of a figure', () => {
  it.each([
    ['1234567.89', { sign: '', groups: ['1', '234', '567'], fraction: '89' }],
    ['-710.58', { sign: '−', groups: ['710'], fraction: '58' }],
    ['0.99735', { sign: '', groups: ['0'], fraction: '99735' }],
    ['41 ft 3 5/8 in', { sign: '', groups: ['41 ft 3 5/8 in'], fraction: '' }],
  ])('%s is cut, never changed', (value, digits) => {
    expect(figureDigits(value)).toEqual(digits)
  })
  it('of a change carry a plus, nothing carries none', () => {
    expect(figureDigits('12.5', true).sign).toBe('+')
    expect(figureDigits('0.000', true).sign).toBe('')
    expect([signOf('12.5'), signOf('0.000'), signOf('-0.001')]).toEqual(['gain', 'none', 'loss'])
  })
})
